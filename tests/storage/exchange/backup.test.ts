import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { BackupError, backupText, mergeBackup, mergeText, readBackup } from '../../../src/storage/exchange/backup.ts'
import { openMemory } from '../../../src/storage/store/memory-store.ts'
import type { Store, Summary } from '../../../src/storage/store/types.ts'
import type { Worksheet } from '../../../src/worksheet/schema/document.ts'
import { SHEET, saveOver, worksheets } from '../sheets.ts'

const store = (): Store => openMemory(undefined)

/** All there is in a store, by id. */
async function all(of: Store): Promise<Map<string, { worksheet: Worksheet; isRemoved: boolean; past: unknown[] }>> {
  const found = new Map()
  for (const { id, removed } of [...(await of.list()), ...(await of.listRemoved())]) {
    const past = await Promise.all(
      (await of.revisions(id)).map(async (line) => ({ ...line, worksheet: await of.revision(id, line.at) })),
    )
    found.set(id, { worksheet: await of.load(id), isRemoved: removed !== undefined, past })
  }
  return found
}

describe('a backup', () => {
  it('brings everything into an empty browser: sheets, the bin, the past and its names', async () => {
    const from = store()
    await from.save('a', SHEET)
    await from.saveRevision('a', { name: 'As agreed' })
    await saveOver(from, 'a', { ...SHEET, title: 'Later' })
    await from.save('b', SHEET)
    await from.remove('b')
    const into = store()
    expect(await mergeBackup(into, (await backupText(from, true)).text)).toEqual({
      added: 2,
      copied: 0,
      same: 0,
      unread: [],
    })
    expect(await all(into)).toEqual(await all(from))
    expect((await into.list())[0]?.changed).toBe((await from.list())[0]?.changed)
  })

  it('brings the lines of the list as they were: job, size and archive', async () => {
    const from = store()
    const original = { kind: 'given' as const, id: 'o', name: 'original', unit: 'mm', value: '420 x 594' }
    await from.save('a', { ...SHEET, job: 'The client', cells: [original] })
    await from.archive('a', true)
    const into = store()
    await mergeBackup(into, (await backupText(from, true)).text)
    const { stamp: _, ...line } = (await from.list())[0] as Summary
    expect((await into.list())[0]).toMatchObject(line)
    expect(line).toMatchObject({ job: 'The client', of: '420 x 594 mm', archived: expect.any(Number) })
  })

  it('goes without the past where that is not asked for', async () => {
    const from = store()
    await from.save('a', SHEET)
    await from.saveRevision('a', { name: 'As agreed' })
    const into = store()
    await mergeBackup(into, (await backupText(from, false)).text)
    expect(await into.revisions('a')).toEqual([])
  })

  it('puts a sheet that differs beside the one here, as a copy', async () => {
    const from = store()
    await from.save('a', { ...SHEET, job: 'theirs' })
    const into = store()
    await into.save('a', { ...SHEET, job: 'ours' })
    const merged = await mergeBackup(into, (await backupText(from, true)).text)
    expect(mergeText(merged)).toBe('1 sheet differs from the one here and was imported as a copy.')
    expect((await into.load('a'))?.job).toBe('ours')
    const copy = (await into.list()).find(({ id }) => id !== 'a')
    expect(copy?.title).toBe(`${SHEET.title}, from a backup`)
    expect((await into.load(copy?.id ?? ''))?.job).toBe('theirs')
  })

  it('adds the past of a sheet that is here', async () => {
    const from = store()
    await from.save('a', SHEET)
    await from.saveRevision('a', { name: 'As agreed' })
    const into = store()
    await into.save('a', SHEET)
    expect(mergeText(await mergeBackup(into, (await backupText(from, true)).text))).toBe('1 sheet was here already.')
    expect((await into.revisions('a')).map(({ name }) => name)).toEqual(['As agreed'])
  })

  it('with a sheet gone bad brings in the others, and names it', async () => {
    const from = store()
    await from.save('a', SHEET)
    const backup = JSON.parse((await backupText(from, true)).text)
    backup.sheets.push({ id: 'b', worksheet: { ...SHEET, title: 'Broken', cells: [{}] } }, { id: '../c' }, null, 3)
    const into = store()
    const { added, unread } = await mergeBackup(into, JSON.stringify(backup))
    expect(added).toBe(2)
    expect(unread).toHaveLength(4)
    expect(unread.at(-1)).toMatch(/^“Broken” cannot be read and was imported as it is.*cells\[0\]/)
    expect((await into.raw('b'))?.data).toEqual({ ...SHEET, title: 'Broken', cells: [{}] })
    await expect(into.load('b')).rejects.toMatchObject({ problem: 'unreadable' })
  })

  test.each([
    ['not JSON', '{"format":"evenfield-backup"', /not JSON/],
    ['another file', '{"format":"evenfield-worksheet"}', /not a backup/],
    ['a later version', '{"format":"evenfield-backup","version":2,"sheets":[]}', /newer version of Evenfield/],
    ['brackets without end', '['.repeat(100_000), /nested too deep/],
  ])('that is %s is refused', (_, text, words) => {
    expect(() => readBackup(text)).toThrow(BackupError)
    expect(() => readBackup(text)).toThrow(words)
  })
})

/** A store with a few sheets, some of ids that another may have too. */
const stores = fc
  .uniqueArray(
    fc.record({
      id: fc.constantFrom('a', 'b', 'c', 'd'),
      states: fc.array(worksheets, { minLength: 1, maxLength: 3 }),
      isRemoved: fc.boolean(),
    }),
    { selector: ({ id }) => id, maxLength: 4 },
  )
  .map((sheets) => async (): Promise<Store> => {
    const made = store()
    for (const { id, states, isRemoved } of sheets) {
      for (const [at, state] of states.entries()) {
        await saveOver(made, id, state)
        if (at === 0) await made.saveRevision(id, { name: 'first' })
      }
      if (isRemoved) await made.remove(id)
    }
    return made
  })

test('merging loses neither side, and a second time changes nothing', async () => {
  await fc.assert(
    fc.asyncProperty(stores, stores, async (makeOurs, makeTheirs) => {
      const [ours, theirs] = [await makeOurs(), await makeTheirs()]
      const [before, coming] = [await all(ours), await all(theirs)]
      const backup = (await backupText(theirs, true)).text
      await mergeBackup(ours, backup)
      const after = await all(ours)

      for (const [id, { worksheet, isRemoved, past }] of before) {
        expect(after.get(id)).toMatchObject({ worksheet, isRemoved })
        for (const revision of past) expect(after.get(id)?.past).toContainEqual(revision)
      }
      for (const { worksheet, past } of coming.values()) {
        const titles = [worksheet.title, `${worksheet.title}, from a backup`]
        const home = [...after.values()].find(
          (one) =>
            titles.includes(one.worksheet.title) &&
            isDeepStrictEqual({ ...one.worksheet, title: '' }, { ...worksheet, title: '' }),
        )
        expect(home).toBeDefined()
        const stands = [...after.values()].flatMap((one) => one.past as { worksheet: Worksheet }[])
        for (const revision of past as { worksheet: Worksheet }[])
          expect(stands.map((one) => one.worksheet)).toContainEqual(revision.worksheet)
      }

      await mergeBackup(ours, backup)
      expect(await all(ours)).toEqual(after)
    }),
    { numRuns: 100 },
  )
})
