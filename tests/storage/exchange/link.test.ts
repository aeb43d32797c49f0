import { deflateSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fromLink, isLink, LinkError, linkSize, toLink } from '../../../src/storage/exchange/link.ts'
import { SHEET, worksheets } from '../sheets.ts'

const packed = (text: string | Uint8Array): string => `s=1.${deflateSync(text).toString('base64url')}`

describe('a link', () => {
  test('brings back the very sheet that went in', async () => {
    await fc.assert(
      fc.asyncProperty(worksheets, async (worksheet) => {
        expect(await fromLink(await toLink(worksheet))).toEqual(worksheet)
      }),
      { numRuns: 300 },
    )
  })

  test('opens with the sign before it or without', async () => {
    expect(await fromLink(`#${await toLink(SHEET)}`)).toEqual(SHEET)
  })

  test('holds only what an address carries as it is', async () => {
    await fc.assert(
      fc.asyncProperty(worksheets, async (worksheet) => {
        expect(await toLink(worksheet)).toMatch(/^s=1\.[A-Za-z0-9_-]+$/)
      }),
      { numRuns: 50 },
    )
  })

  test('is much shorter than the sheet', async () => {
    const long = { ...SHEET, cells: Array.from({ length: 200 }, (_, at) => ({ ...SHEET.cells[1], id: `${at}` })) }
    const link = await toLink(long as typeof SHEET)
    expect(link.length).toBeLessThan(JSON.stringify(long).length / 8)
  })

  test('is distinguished from another fragment', () => {
    expect(isLink('#s=1.abc')).toBe(true)
    expect(isLink('#frame')).toBe(false)
    expect(isLink('')).toBe(false)
  })
})

describe('a link that is broken is an error in words, promptly', () => {
  const words = async (fragment: string): Promise<string> => {
    try {
      await fromLink(fragment)
    } catch (error) {
      expect(error).toBeInstanceOf(LinkError)
      return (error as LinkError).message
    }
    throw new Error('It opened.')
  }

  test('cut short anywhere', async () => {
    const link = await toLink(SHEET)
    for (let length = 0; length < link.length; length += 1) {
      expect(await words(link.slice(0, length))).toMatch(/Ask for it again, or for the file\./)
    }
  })

  test('with any one character altered', async () => {
    const link = await toLink(SHEET)
    for (let at = 4; at < link.length; at += 1) {
      const other = link[at] === 'A' ? 'B' : 'A'
      const altered = link.slice(0, at) + other + link.slice(at + 1)
      const opened = await fromLink(altered).catch((error: unknown) => error)
      // The last character's low bits are not used: altering them alters nothing.
      if (!(opened instanceof LinkError)) expect(opened).toEqual(SHEET)
    }
  })

  test('made by a newer version', async () => {
    expect(await words('s=3.AAAA')).toMatch(/newer version of Evenfield \(version 3 of links, this one reads up to 2\)/)
  })

  test('holding something else', async () => {
    expect(await words(packed('{"format":"other"}'))).toMatch(/cannot be read\. This is not a worksheet/)
    expect(await words(packed('not json'))).toMatch(/cannot be read/)
    expect(await words(packed(JSON.stringify({ ...SHEET, version: 9 })))).toMatch(/newer version/)
    expect(await words(packed(JSON.stringify({ ...SHEET, cells: [{ kind: 'given', id: 'x', name: 'x' }] })))).toMatch(
      /cells\[0\]\.value/,
    )
    expect(await words(packed(Uint8Array.of(0xff, 0xfe, 0x22)))).toMatch(/cut short or altered/)
  })

  test('holding brackets without end', async () => {
    expect(await words(packed('['.repeat(1_500_000)))).toMatch(/too deep/)
  })

  test('a small one that swells past 2 MB', async () => {
    const bomb = packed(Buffer.alloc(500_000_000, 0x20))
    expect(bomb.length).toBeLessThan(1_000_000)
    expect(await words(bomb)).toMatch(/more than 2 MB/)
  })

  test('one too long to be looked at', async () => {
    expect(await words(`s=1.${'A'.repeat(2_000_001)}`)).toMatch(/longer than any worksheet needs/)
  })

  test('any text at all', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: 'binary' }),
        fc.constantFrom('', '#', 's=', 's=1.', '#s=1.', 's=1.eJw'),
        async (rest, start) => {
          expect(await words(start + rest)).not.toBe('')
        },
      ),
      { numRuns: 1000 },
    )
  })

  test('and none of it changes a prototype', async () => {
    const hostile = `{"format":"evenfield-worksheet","version":1,"title":"x","__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"cells":[{"kind":"note","id":"a","text":"t","__proto__":{"polluted":1}}]}`
    const opened = await fromLink(packed(hostile))
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
    expect((opened as Record<string, unknown>).polluted).toBeUndefined()
    expect((opened.cells[0] as Record<string, unknown>).polluted).toBeUndefined()
  })
})

describe('the size of a link', () => {
  test.each([
    [1_240, 'About 1\u202f200 characters; any messenger or mail program can send it.'],
    [2_000, 'About 2\u202f000 characters; any messenger or mail program can send it.'],
  ])('%i characters', (length, words) => {
    expect(linkSize('x'.repeat(length))).toEqual({ characters: length, carried: true, words })
  })

  test('past what messengers carry, the file is offered', () => {
    const { carried, words } = linkSize('x'.repeat(23_456))
    expect(carried).toBe(false)
    expect(linkSize('x'.repeat(2_001)).carried).toBe(false)
    expect(words).toBe(
      'About 23\u202f000 characters; some messengers and mail programs cut an address past about 2\u202f000. Send the file instead if this link arrives cut short.',
    )
  })
})
