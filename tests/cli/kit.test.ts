import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/cli/input-error.ts'
import { withSets } from '../../src/cli/read-worksheet.ts'
import { LIBRARY } from '../../src/functions/index.ts'
import type { Piece } from '../../src/kit/piece.ts'
import { type Given, Sheet } from '../../src/worksheet/index.ts'
import { JOBS, readTemplate } from '../templates/open.ts'
import { evenfield } from './run.ts'

const { pieces } = JSON.parse(readFileSync('shared/kit.json', 'utf8')) as { readonly pieces: readonly Piece[] }

describe('--set of a piece of kit', () => {
  it('fills in the figures of the piece it names', async () => {
    const { out } = await evenfield(
      ...['compute', 'templates/flat-sheet.json', '--set', 'lens=60 mm macro lens', '--json'],
    )
    const { cells } = JSON.parse(out)
    expect(cells.focal).toMatchObject({ value: 0.06, from: 'kit' })
    expect(cells.lens.error).toBeNull()
  })

  it('says what the kit has where it has no such piece, and what else to set', async () => {
    const { code, out, err } = await evenfield('compute', 'templates/flat-sheet.json', '--set', 'lens=83.25', '--json')
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain('--set lens: the kit has no lens named “83.25”; it has “50 mm lens”')
    expect(err).toMatch(/to give the figure itself, set .*focal.* instead/)
  })

  it.each(JOBS)('in %s takes every piece of its sort, and nothing else', (job) => {
    const worksheet = readTemplate(job)
    const givens = worksheet.cells.filter((cell): cell is Given => cell.kind === 'given' && cell.entry === 'kit')
    for (const { name, id, sort } of givens) {
      expect(() => withSets(worksheet, [{ name, text: '83.25' }], job)).toThrow(InputError)
      const own = pieces.filter((piece) => piece.sort === sort)
      for (const text of ['', ...own.map((piece) => piece.name)]) {
        const sheet = new Sheet(withSets(worksheet, [{ name, text }], job), LIBRARY)
        expect(sheet.outcome(id).state, `${name}: ${text}`).toBe(text === '' ? 'waiting' : 'value')
      }
    }
  })
})
