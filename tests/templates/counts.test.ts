import { expect, test } from 'vitest'

const PARTS = import.meta.glob<object>('../../templates/parts/*/*.json', { import: 'default', eager: true })

/** Nouns that are counted in a message; a figure before one must not be 1, or the noun would not agree. */
const COUNTED =
  /\} ((?:working )?days|frames|pictures|pieces|originals|masters|copies|parts|pages|steps|pops|points|rows|sets|lamps)\b/g

/** Counts that are two or more wherever they are shown, and why. */
const MORE_THAN_ONE: Readonly<Record<string, string>> = {
  '{count(back_readings)} points': 'the check passes from five points on',
  '{count(readings)} points': 'the check passes from five points on',
  '{greatest(originals.parts)} frames': 'the check fails where there are more than twelve',
  '{pages} pages': 'a leaf has two',
  '{copies} sets': 'the check passes from two on',
  '{floor(master_data / 4 [GiB]) + 1} parts': 'the file does not fit into one',
  '{frames} frames': 'one frame does not reach the sampling',
  '{lit_parts} parts': 'the whole is not lit evenly',
  '{focus_steps(max(wanted_depth, 0.001 mm), depth)} frames': 'one frame does not reach the depth',
}

function* messagesIn(value: unknown, key = ''): Generator<string> {
  if (typeof value === 'string') {
    if (key === 'message' || key === 'passes') yield value
  } else if (typeof value === 'object' && value !== null)
    for (const [name, one] of Object.entries(value)) yield* messagesIn(one, Array.isArray(value) ? key : name)
}

const counted = (message: string): string[] =>
  [...message.matchAll(COUNTED)].map(([found, noun]) => {
    const end = message.indexOf(found)
    return `${message.slice(message.lastIndexOf('{', end), end + 1)} ${noun}`
  })

const all = Object.values(PARTS).flatMap((part) => [...messagesIn(part)].flatMap(counted))

test('a count in a message of a job agrees with its noun, also where it is 1', () => {
  expect(all.filter((one) => !(one in MORE_THAN_ONE))).toEqual([])
})

test('every count that is always more than one is still there', () => {
  expect(Object.keys(MORE_THAN_ONE).filter((one) => !all.includes(one))).toEqual([])
})

test('a count that may be 1 would be found', () => {
  expect(counted('it takes {ceil(days)} working days in all')).toEqual(['{ceil(days)} working days'])
})
