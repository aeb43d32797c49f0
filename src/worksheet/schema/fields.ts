import * as v from 'valibot'
import { MAX_READ_LENGTH, NAME_PATTERN } from '../format/format.ts'
import * as words from './words.ts'

/** What the cells of a worksheet are made of. */

export const text = v.pipe(v.string(), v.maxLength(MAX_READ_LENGTH))
export const id = v.pipe(v.string(), v.minLength(1), v.maxLength(64))
export const name = v.pipe(v.string(), v.regex(NAME_PATTERN, words.nameIsLetter))
export const label = v.optional(text)
/** Set on the equipment, or read there: shown At the stand. */
export const stand = v.optional(v.boolean())

/** Names that the library leaves out of every record, though a cell may be named so. */
const LEFT_OUT = ['constructor', 'prototype'] as const

/** A record by names of cells or of figures, which may be any name. */
export function named<const Value extends v.GenericSchema>(value: Value) {
  const plain = v.record(v.pipe(v.string(), v.regex(NAME_PATTERN)), value)
  const run: (typeof plain)['~run'] = (dataset, config) => {
    const input = dataset.value
    const read = plain['~run'](dataset, config)
    if (!read.typed || typeof input !== 'object' || input === null) return read
    for (const key of LEFT_OUT) {
      if (!Object.hasOwn(input, key)) continue
      const one = v.safeParse(value, (input as Record<string, unknown>)[key])
      if (one.success) Object.assign(read.value, { [key]: one.output })
    }
    return read
  }
  return { ...plain, '~run': run }
}

/**
 * What a value was read under: the figures it depends on as filled in then, for as long as `text` is what was read; when that
 * was, and the initials of who read it.
 */
export const measuredUnder = v.optional(
  v.looseObject({ text, figures: named(text), when: v.optional(text), by: v.optional(text) }),
)
/** For a reading: the cells that decide what is read, so that it is to be read again when one of them changes. */
export const readUnder = v.optional(v.array(name))
