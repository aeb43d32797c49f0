import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { FileError, fileName, openFile } from '../../../src/storage/exchange/file.ts'
import { VERSION } from '../../../src/worksheet/format/format.ts'
import { writeDocument } from '../../../src/worksheet/schema/read-document.ts'
import { SHEET, worksheets } from '../sheets.ts'

const file = (content: BlobPart, name = 'map.evenfield.json') => new File([content], name)

describe('a file name', () => {
  test.each([
    ['Flat sheet on a copy stand', 'Flat-sheet-on-a-copy-stand.evenfield.json'],
    ['Feuille à plat, 420 × 297', 'Feuille-à-plat-420-297.evenfield.json'],
    ['地図 1/2', '地図-1-2.evenfield.json'],
    ['../../etc/passwd', 'etc-passwd.evenfield.json'],
    ['a<b>:"c"|d?*\\e', 'a-b-c-d-e.evenfield.json'],
    ['', 'worksheet.evenfield.json'],
    ['...', 'worksheet.evenfield.json'],
    ['con', 'con-worksheet.evenfield.json'],
  ])('for “%s” is %s', (title, name) => {
    expect(fileName(title)).toBe(name)
  })

  test('is cut between signs, not within one', () => {
    expect(fileName('𠀀'.repeat(100))).toBe(`${'𠀀'.repeat(45)}.evenfield.json`)
  })

  test('is one any system takes, whatever the title', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (title) => {
        const name = fileName(title)
        expect(name).toMatch(/^[\p{L}\p{N}\p{M}_][\p{L}\p{N}\p{M}_.-]*\.evenfield\.json$/u)
        expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(255)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('a file', () => {
  test('brings back the very sheet that was saved', async () => {
    await fc.assert(
      fc.asyncProperty(worksheets, async (worksheet) => {
        expect(await openFile(file(writeDocument(worksheet)))).toEqual(worksheet)
      }),
      { numRuns: 100 },
    )
  })

  test('opens with the mark some editors put in front', async () => {
    expect(await openFile(file(`\ufeff${writeDocument(SHEET)}`))).toEqual(SHEET)
  })

  const words = async (opened: Promise<unknown>): Promise<string> => {
    const error = await opened.then(
      () => undefined,
      (reason: unknown) => reason,
    )
    expect(error).toBeInstanceOf(FileError)
    return (error as FileError).message
  }

  test('that is no text is named', async () => {
    expect(await words(openFile(file(Uint8Array.of(0x89, 0x50, 0xff))))).toBe(
      'map.evenfield.json is not a text file (its bytes are not UTF-8).',
    )
  })
  test('with a flaw is named with the place', async () => {
    const flawed = JSON.stringify({ ...SHEET, cells: [{ kind: 'given', id: 'x', name: 'x', value: 3 }] })
    expect(await words(openFile(file(flawed)))).toMatch(/^map\.evenfield\.json cannot be opened\. .*cells\[0\]\.value/)
  })
  test('of a later version is reported so', async () => {
    expect(await words(openFile(file(JSON.stringify({ ...SHEET, version: VERSION + 1 }))))).toMatch(/newer version/)
  })
  test('too large is refused unread', async () => {
    const large = { size: 30_000_000, name: 'video.json' } as File
    expect(await words(openFile(large))).toBe('video.json is larger than 20 MB, which no worksheet needs.')
  })
  test('that has gone is said to have gone', async () => {
    const gone = {
      size: 10,
      name: 'gone.json',
      arrayBuffer: () => Promise.reject(new Error('NotFound')),
    } as unknown as File
    expect(await words(openFile(gone))).toMatch(/^gone\.json could not be read/)
  })
})
