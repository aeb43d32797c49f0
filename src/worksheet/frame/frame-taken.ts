import { LENGTH, NONE, showQuantity, TIME } from '../../units/index.ts'
import { labelOf } from '../document/label.ts'
import { notationUnit } from '../document/measured.ts'
import { readGiven } from '../document/read-given.ts'
import type { Cell, Frame, Given } from '../schema/document.ts'
import * as words from './words.ts'

/** What the camera wrote where the sheet asked for something else: “f/8 set, f/5.6 in the frame”. */
export interface TakenDifference {
  readonly given: Given
  readonly part: string
  /** As the sheet shows it. */
  readonly asked: string
  /** As it would be typed into the given. */
  readonly found: string
}

interface TakenPart {
  /** By how many times figures may differ and still be the same mark: cameras round them in different ways. */
  readonly sameWithin: number
  readonly text: (value: number) => string
}

/** Marks of apertures and times lie a third of a stop apart; half of that is between them. */
const PARTS: Readonly<Record<string, TakenPart>> = {
  aperture: {
    sameWithin: 2 ** (1 / 12),
    text: (value) => showQuantity(value, NONE, { unit: notationUnit(NONE, 'f-number') }).text,
  },
  time: {
    sameWithin: 2 ** (1 / 6),
    text: (value) => showQuantity(value, TIME, { unit: notationUnit(TIME, 'shutter') }).text,
  },
  iso: { sameWithin: 2 ** (1 / 6), text: (value) => String(value) },
  focal: { sameWithin: 1.02, text: (value) => showQuantity(value, LENGTH).text },
}

/** The figure of a part as it would be typed, where the camera wrote it. */
function written(picture: Frame['picture'], part: string): { text: string; value: number | undefined } | undefined {
  const taken = picture?.taken as Readonly<Record<string, unknown>> | null | undefined
  const value = taken && Object.hasOwn(taken, part) ? taken[part] : undefined
  const figure = Object.hasOwn(PARTS, part) ? PARTS[part] : undefined
  if (figure) return typeof value === 'number' && value > 0 ? { text: figure.text(value), value } : undefined
  if (part === 'when' && typeof value === 'string') return { text: value.slice(0, 10), value: undefined }
  return typeof value === 'string' && value !== '' ? { text: value, value: undefined } : undefined
}

/** For each given that a frame fills: what the camera wrote. */
function filled(cells: readonly Cell[], { fills = {}, picture }: Pick<Frame, 'fills' | 'picture'>) {
  return Object.entries(fills).flatMap(([part, name]) => {
    const given = cells.find((cell): cell is Given => cell.kind === 'given' && cell.name === name)
    const found = written(picture, part)
    return given && found ? [{ part, given, found }] : []
  })
}

/** The givens that are not filled in yet, with what the camera wrote. */
export const takenForBlanks = (cells: readonly Cell[], frame: Pick<Frame, 'fills' | 'picture'>): Given[] =>
  filled(cells, frame).flatMap(({ given, found: { text } }) =>
    given.value.trim() === '' ? [{ ...given, value: text, from: { kind: 'measured' as const, text } }] : [],
  )

/** Where the camera wrote something else than the sheet asked for. */
export function takenDifferences(cells: readonly Cell[], frame: Pick<Frame, 'fills' | 'picture'>): TakenDifference[] {
  return filled(cells, frame).flatMap(({ part, given, found }) => {
    if (given.value.trim() === '') return []
    const asked = readGiven(given)
    const same =
      found.value === undefined || typeof asked.value !== 'number'
        ? given.value.trim() === found.text
        : Math.max(asked.value / found.value, found.value / asked.value) <= (PARTS[part]?.sameWithin ?? 1)
    return same ? [] : [{ given, part, asked: asked.readAs ?? given.value.trim(), found: found.text }]
  })
}

/** A difference in words. */
export const takenInWords = ({ given, asked, found }: TakenDifference): string =>
  words.setOtherwise(labelOf(given), asked, found)
