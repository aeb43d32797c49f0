import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it, test } from 'vitest'
import { MOMENTS } from '../../../src/app/common/words.ts'
import { found, isNamedSo } from '../../../src/app/shelf/shelf-find.ts'
import { SEARCHES } from '../../../src/app/shelf/words.ts'
import type { ShelfEntry } from '../../../src/app/templates/templates.ts'
import { STAGES } from '../../../src/worksheet/index.ts'

const FOLDER = new URL('../../../templates/', import.meta.url)
const SHELF: ShelfEntry[] = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.json'))
  .map((file) => ({
    key: file.replace(/\.json$/, ''),
    ...JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')).shelf,
  }))

const keys = (query: string): string[] => found(SHELF, query).entries.map(({ key }) => key)

test.each(SEARCHES)('“%s” finds an answer', (_, query) => {
  expect(keys(query).length).toBeGreaterThan(0)
  expect(keys(query).length).toBeLessThan(8)
})

describe('the words people use', () => {
  test.each([
    ['book', 'bound-volume'],
    ['Books', 'bound-volume'],
    ['glare', 'glossy'],
    ['slides', 'transparencies'],
    ['too big', 'in-tiles'],
    ['too big for the board', 'in-tiles'],
    ['a painting', 'upright-original'],
    ['phone', 'phone-stand'],
    ['Glazed', 'glossy'],
    ['copyright', 'rights-and-light'],
    ['banding', 'flicker'],
    ['overlap', 'in-tiles'],
    ['45 MP', 'flat-sheet'],
    ['45 megapixels', 'flat-sheet'],
    ['35 mm slides', 'transparencies'],
  ])('“%s”', (query, key) => {
    expect(keys(query)).toContain(key)
  })

  it('find every template by each of its own', () => {
    for (const { key, words, answer } of SHELF) for (const word of [answer, ...words]) expect(keys(word)).toContain(key)
  })

  it('that mean nothing leave all to be seen, as none do', () => {
    for (const query of ['', '  ', 'a', 'what is it'.slice(5)]) expect(keys(query).length).toBe(SHELF.length)
  })

  it('that no job matches find nothing', () => {
    expect(found(SHELF, 'xylophone')).toEqual({ entries: [], whole: false })
  })

  it('of which some match find the jobs that match most', () => {
    const { entries, whole } = found(SHELF, 'an old worm-eaten book')
    expect(whole).toBe(false)
    expect(entries.map(({ key }) => key)).toContain('bound-volume')
  })

  it('are found in a description only where nothing is called so', () => {
    const answer = (key: string, words: string[], about: string): ShelfEntry => ({
      ...{ key, words, about },
      ...{ answer: 'A sheet', order: 1, moment: 'frame' },
    })
    const two = [answer('a', ['lamp'], ''), answer('b', [], 'Where a lamp stands.')]
    expect(found(two, 'lamps').entries.map(({ key }) => key)).toEqual(['a'])
    expect(found(two, 'stands').entries.map(({ key }) => key)).toEqual(['b'])
  })
})

test('a saved sheet is found by its title', () => {
  expect(isNamedSo({ title: 'Ferry Lane maps' }, 'map ferry')).toBe(true)
  expect(isNamedSo({ title: 'Ferry Lane maps' }, 'book')).toBe(false)
  expect(isNamedSo({ title: 'A flat sheet', job: 'Ferry Lane', of: '420 x 297 mm' }, 'ferry 420')).toBe(true)
})

test('every stage of a job has its place on the shelf, and every template a stage', () => {
  expect(MOMENTS.map(([stage]) => stage)).toEqual([...STAGES])
  for (const { key, moment } of SHELF) expect(STAGES, key).toContain(moment)
})
