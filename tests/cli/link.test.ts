import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { currentJobs, digestOf, findReleased, RELEASED, releasedJobs } from '../../src/cli/released-jobs.ts'
import { fromLink, toLink } from '../../src/storage/exchange/link.ts'
import { withOrigin } from '../../src/storage/exchange/origin.ts'
import { readData, type Worksheet } from '../../src/worksheet/index.ts'
import { evenfield, file, inTerminal, json } from './run.ts'

const released = releasedJobs()

/** Ten givens changed, as they are when someone types over them. */
function withTenChanges(worksheet: Worksheet): Worksheet {
  let changes = 0
  const cells = worksheet.cells.map((cell) => {
    if (cell.kind !== 'given' || (cell.entry ?? 'quantity') !== 'quantity' || changes >= 10) return cell
    changes++
    const value = `${(changes * 13.7 + 2).toFixed(1)} ${cell.unit === 'mm' ? 'mm' : ''}`.trim()
    return { ...cell, value, from: { kind: 'typed' as const, text: value } }
  })
  return { ...worksheet, cells }
}

describe('the jobs of every release', () => {
  test('are there under their own digests, and open', async () => {
    expect(released.length).toBeGreaterThan(20)
    expect(readdirSync(RELEASED)).toHaveLength(released.length + 1)
    for (const { job, digest, worksheet } of released) {
      expect(digestOf(worksheet), job).toBe(digest)
      expect(readData(worksheet).cells.length, job).toBeGreaterThan(0)
    }
  })
})

describe('a link in the terminal', () => {
  test('of every job with ten changed givens, and some of older releases, is at most 600 characters, where it came from included', {
    timeout: 300_000,
  }, async () => {
    // Each link looks for its base among the jobs of all releases, so that all of all would take ever longer.
    const now = new Set(currentJobs().map(({ digest }) => digest))
    for (const { job, worksheet } of released.filter(({ digest }, at) => now.has(digest) || at % 6 === 0)) {
      const changed = withTenChanges(worksheet)
      const sent = withOrigin(changed, { sheet: crypto.randomUUID(), at: 1_795_000_000_000 })
      const link = await toLink(sent, released)
      expect(link.length, job).toBeLessThanOrEqual(600)
      const find = async (name: string, digest: string): Promise<Worksheet | undefined> =>
        released.find((one) => one.job === name && one.digest === digest)?.worksheet
      expect(await fromLink(link, find), job).toEqual(sent)
    }
  })

  test('of an unchanged collection run is one line of at most 1,500 characters, and compute reads it', async () => {
    for (const options of [[], ['--figures']]) {
      const made = await evenfield('link', 'templates/collection-run.json', ...options)
      expect(made.code, made.err).toBe(0)
      expect(made.out).toMatch(/^#s=2\.[A-Za-z0-9_-]+\n$/)
      expect(made.out.trim().length).toBeLessThanOrEqual(options.length === 0 ? 1500 : 2600)
      const link = made.out.trim()
      const direct = json(await evenfield('compute', 'templates/collection-run.json', '--json')) as { checks: object }
      const through = json(await evenfield('compute', link, '--json')) as { checks: object }
      if (options.length === 0) expect(through).toEqual(direct)
      else expect(Object.keys(through.checks).length).toBeGreaterThan(0)
      expect(json(inTerminal(made.out, 'compute', '-', '--json'))).toEqual(through)
    }
  })

  test('gives the same figures where what it fills in is changed by --set', async () => {
    const set = ['--set', 'focal=90', '--set', 'original=610 x 864']
    const link = (await evenfield('link', 'templates/flat-sheet.json', ...set)).out.trim()
    const through = json(await evenfield('compute', link, '--json'))
    expect(through).toEqual(json(await evenfield('compute', 'templates/flat-sheet.json', ...set, '--json')))
  })

  test('made from a job opens by its digest alone, whatever becomes of the job', async () => {
    for (const { job, digest, worksheet } of released) expect(await findReleased(job, digest), job).toEqual(worksheet)
    expect(await findReleased('flat-sheet', '0000000000')).toBeUndefined()
    expect(await findReleased('../flat-sheet', '0000000000')).toBeUndefined()
  })

  test('altered, or not a link, it is one line that says so', async () => {
    for (const link of ['#', '#s=2.AAAA', '#s=9.AAAA', '#sheet/1', '#s=1.']) {
      const ran = await evenfield('compute', link)
      expect(ran.code, link).toBe(2)
      expect(ran.err, link).toMatch(/^evenfield: the link: /)
    }
    expect((await evenfield('link')).code).toBe(2)
    expect((await evenfield('link', file('not.json', '{}'))).code).toBe(2)
  })
})
