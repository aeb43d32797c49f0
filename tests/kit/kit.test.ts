import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { genericKit } from '../../src/kit/generic.ts'
import { kitIn, takeKitIn, takePieces } from '../../src/kit/kit-files.ts'
import { FIGURE_LABELS, SORT_LABELS } from '../../src/kit/labels.ts'
import { KitError, MAX_KIT_LENGTH, type Piece, readKitFile, writeKitFile } from '../../src/kit/piece.ts'
import { piecesIn, Studio } from '../../src/kit/studio.ts'
import { backupText } from '../../src/storage/exchange/backup.ts'
import { openMemory } from '../../src/storage/store/memory-store.ts'
import { readFigure } from '../../src/worksheet/document/kit-given.ts'
import { KIT_FIGURES, KIT_SORTS } from '../../src/worksheet/format/kit-sorts.ts'

const lens = (id: string, name = 'A lens'): Piece => ({ id, sort: 'lens', name, figures: { focal: '60 mm' } })

describe('the generic kit', () => {
  it('can be read, every figure of it, and has every sort', async () => {
    const pieces = readKitFile(readFileSync('shared/kit.json', 'utf8'))
    expect(await genericKit()).toEqual(pieces)
    expect(new Set(pieces.map(({ id }) => id)).size).toBe(pieces.length)
    expect([...new Set(pieces.map(({ sort }) => sort))].sort()).toEqual([...KIT_SORTS].sort())
    for (const { sort, name, figures } of pieces)
      for (const [figure, text] of Object.entries(figures)) {
        const known = KIT_FIGURES[sort].find((one) => one.name === figure)
        expect([name, figure, known !== undefined]).toEqual([name, figure, true])
        if (known) expect([name, figure, readFigure(known, text).error?.message]).toEqual([name, figure, undefined])
      }
  })
})

test('every sort and every figure has its words', () => {
  for (const sort of KIT_SORTS) {
    expect(SORT_LABELS[sort]).toHaveLength(2)
    for (const { name } of KIT_FIGURES[sort])
      expect([name, FIGURE_LABELS[name]?.label]).toEqual([name, expect.any(String)])
  }
})

describe('a kit as a file', () => {
  it('comes back as it was', () => {
    const text = fc.string({ maxLength: 40 })
    const piece = fc.record({
      id: fc.string({ minLength: 1, maxLength: 20 }),
      sort: fc.constantFrom(...KIT_SORTS),
      name: text,
      figures: fc.dictionary(fc.constantFrom('focal', 'thread', 'mass'), text),
    })
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
        expect(readKitFile(writeKitFile(pieces as Piece[]))).toEqual(JSON.parse(JSON.stringify(pieces)))
      }),
    )
  })

  it('is refused with what is wrong and where', () => {
    const refused = (text: string): string => {
      try {
        readKitFile(text)
      } catch (error) {
        if (error instanceof KitError) return error.message
        throw error
      }
      return ''
    }
    expect(refused('rubbish')).toContain('not JSON')
    expect(refused('null')).toContain('not a kit')
    expect(refused('{"format":"evenfield-worksheet"}')).toContain('not a kit')
    const wrong = (piece: object): string =>
      refused(JSON.stringify({ format: 'evenfield-kit', version: 1, pieces: [lens('a'), piece] }))
    expect(wrong({ ...lens('b'), sort: 'tripod' })).toContain('pieces › 1 › sort')
    expect(wrong({ ...lens('b'), figures: { focal: 60 } })).toContain('pieces › 1 › figures › focal')
    expect(wrong({ ...lens('b'), figures: { '<script>': '1' } })).toContain('pieces › 1 › figures')
    expect(refused(' '.repeat(MAX_KIT_LENGTH + 1))).toContain('too large')
    expect(refused(JSON.stringify({ format: 'evenfield-kit', version: 2, pieces: [] }))).toContain('version')
  })

  it('pollutes nothing', () => {
    const text = `{"format":"evenfield-kit","version":1,"pieces":[{"id":"a","sort":"lens","name":"x","figures":{"__proto__":"60"}}]}`
    try {
      readKitFile(text)
    } catch (error) {
      expect(error).toBeInstanceOf(KitError)
    }
    expect(Object.prototype).not.toHaveProperty('0')
    expect(({} as Record<string, unknown>).focal).toBeUndefined()
  })
})

describe('the studio’s kit', () => {
  const studio = () => new Studio(openMemory(undefined))

  it('keeps what is put in, changed, copied, removed and put back', async () => {
    const kit = studio()
    expect(await kit.pieces()).toBeUndefined()
    await kit.put(lens('a'))
    await kit.put(lens('b'))
    await kit.put(lens('a', 'Another name'))
    await kit.duplicate(lens('a'), lens('c', 'A copy'))
    expect((await kit.pieces())?.map(({ id, name }) => [id, name])).toEqual([
      ['a', 'Another name'],
      ['c', 'A copy'],
      ['b', 'A lens'],
    ])
    await kit.remove('c')
    await kit.putBack(lens('c'), 1)
    expect((await kit.pieces())?.map(({ id }) => id)).toEqual(['a', 'c', 'b'])
  })

  it('takes in others without losing its own', async () => {
    const kit = studio()
    await kit.put(lens('a', 'Mine'))
    await kit.put(lens('b'))
    await kit.take([lens('b', 'Theirs'), lens('z')])
    expect((await kit.pieces())?.map(({ id, name }) => [id, name])).toEqual([
      ['a', 'Mine'],
      ['b', 'Theirs'],
      ['z', 'A lens'],
    ])
  })

  it('gives sheets the generic kit until it has one of its own', async () => {
    const store = openMemory(undefined)
    expect(await piecesIn(store)).toEqual(await genericKit())
    await new Studio(store).put(lens('a'))
    expect(await piecesIn(store)).toEqual([lens('a')])
  })

  it('what cannot be read is not written over', async () => {
    const store = openMemory(undefined)
    await store.saveSetting('kit', [{ nonsense: true }])
    await expect(new Studio(store).put(lens('a'))).rejects.toThrow('cannot be read here')
    expect(await store.setting('kit')).toEqual([{ nonsense: true }])
  })
})

describe('a kit that comes in with files', () => {
  const file = (text: string): File => new File([text], 'any.json')

  it('is distinguished from other files by what it says it is', async () => {
    expect(await kitIn(file(writeKitFile([lens('a')])))).toEqual([lens('a')])
    expect(await kitIn(file('{"format":"evenfield-worksheet"}'))).toBeUndefined()
    await expect(kitIn(file('{"format":"evenfield-kit"}'))).rejects.toThrow(KitError)
  })

  it('neither side loses: what differs is beside it, once', async () => {
    const store = openMemory(undefined)
    await new Studio(store).put(lens('a', 'Mine'))
    expect(await takePieces(store, [lens('a', 'Theirs'), lens('b')])).toBe('2 pieces of kit added.')
    expect(await takePieces(store, [lens('a', 'Theirs'), lens('b')])).toBe('You already have all the kit in this file.')
    const names = (await new Studio(store).pieces())?.map(({ name }) => name)
    expect(names).toEqual(['Mine', 'Theirs, from a file', 'A lens'])
  })

  it('goes along with a backup', async () => {
    const from = openMemory(undefined)
    await new Studio(from).put(lens('a'))
    const pieces = await new Studio(from).pieces()
    const into = openMemory(undefined)
    expect(await takeKitIn(into, (await backupText(from, true, { kit: pieces })).text)).toBe('1 piece of kit added.')
    expect(await new Studio(into).pieces()).toEqual(pieces)
    expect(await takeKitIn(into, (await backupText(from, true)).text)).toBe('')
    expect(await takeKitIn(into, '{"kit": [1]}')).toContain('cannot be read')
  })
})
