import fc from 'fast-check'
import { stateOf } from '../../src/storage/store/summary.ts'
import type { Store, Summary } from '../../src/storage/store/types.ts'
import type { Worksheet } from '../../src/worksheet/schema/document.ts'

/** A small sheet of our own. */
export const SHEET: Worksheet = {
  format: 'evenfield-worksheet',
  version: 2,
  title: 'Feuille à plat, 420 × 297',
  cells: [
    { kind: 'note', id: 'a', text: 'Frame', role: 'heading' },
    {
      kind: 'given',
      id: 'b',
      name: 'original_width',
      label: 'Width of the original',
      unit: 'mm',
      value: '420 mm ± 2 mm',
    },
    { kind: 'result', id: 'c', name: 'm', unit: '1:', formula: '36 mm / original_width' },
    { kind: 'check', id: 'd', name: 'fits', condition: 'm < 1:4', message: 'It is {m}.' },
  ],
}

/** Saves a sheet over the state that is in the store. */
export async function saveOver(store: Store, id: string, worksheet: Worksheet): Promise<Summary> {
  const before = await store.raw(id)
  return store.save(id, worksheet, { seen: before ? [stateOf(before.summary)] : [] })
}

/** Text as people and their machines write it, surrogate pairs and halves of them apart. */
const text = fc.oneof(fc.string({ unit: 'grapheme', maxLength: 60 }), fc.string({ unit: 'binary', maxLength: 30 }))
const name = fc.stringMatching(/^[A-Za-z][A-Za-z0-9_]{0,20}$/)
const maybe = fc.option(text, { nil: undefined })
const kind = <const K extends string>(word: K) => fc.constant(word)

const cell = fc.oneof(
  fc.record({ kind: kind('given'), name, label: maybe, unit: maybe, value: text, hint: maybe }),
  fc.record({ kind: kind('result'), name, label: maybe, unit: maybe, formula: text }),
  fc.record({ kind: kind('check'), name, condition: text, message: text, passes: maybe }),
  fc.record({ kind: kind('note'), text, a_key_of_a_later_version: fc.jsonValue({ maxDepth: 3 }) }),
)

/** Any worksheet the schema takes, keys of later versions among its own. */
export const worksheets: fc.Arbitrary<Worksheet> = fc
  .record({ title: text, cells: fc.array(cell, { maxLength: 30 }) })
  .map(({ title, cells }) => {
    const document = {
      format: 'evenfield-worksheet',
      version: 2,
      title,
      cells: cells.map((one, at) => ({ ...one, id: `cell-${at}` })),
    }
    // As it would be after a visit to a file: no undefined, no minus zero, and no prototype passed off as a key.
    return JSON.parse(JSON.stringify(document), (key, value) => (key === '__proto__' ? undefined : value)) as Worksheet
  })
