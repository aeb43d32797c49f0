import { problem, record, type Type, type Value } from '../../language/index.ts'
import { KIT_FIGURES, type KitFigure, type KitSort } from '../format/kit-sorts.ts'
import type { Cell, Given } from '../schema/document.ts'
import type { Change } from './change.ts'
import { type GivenReading, readGiven } from './read-given.ts'
import * as words from './words.ts'

/** A piece of kit as a sheet stores it: its name, and its figures as typed. */
export interface ChosenPiece {
  readonly name: string
  readonly figures: Readonly<Record<string, string>>
}

/** Reads one figure of a piece as the given it is. */
export function readFigure({ name, entry, unit, options, whole }: KitFigure, value: string): GivenReading {
  const cell: Given = { kind: 'given', id: name, name, value }
  return readGiven({
    ...cell,
    ...(entry === undefined ? {} : { entry }),
    ...(unit ? { unit } : {}),
    ...(options ? { options: [...options] } : {}),
    ...(whole ? { whole } : {}),
  })
}

const isFilled = (text: string | undefined): text is string => text !== undefined && text.trim() !== ''

/** What a lamp's candela is by one reading of a meter, where it is not known otherwise: E d². */
function byReading(sort: KitSort, parts: Record<string, Value>): void {
  const { intensity, reading, reading_distance: distance } = parts
  if (sort !== 'lamp' || intensity !== undefined || typeof reading !== 'number' || typeof distance !== 'number') return
  parts.intensity = reading * distance ** 2
}

/** Reads a piece of kit: a record of the figures that are known of it. */
function readKit({ sort, value, piece }: Given): GivenReading {
  if (!sort) return { offers: [], error: problem(words.chooseSort, 0, value.length) }
  if (value.trim() === '') return { offers: [] }
  // A name alone says nothing of the piece: nothing would be computed with it, and nothing said.
  if (!piece) return { offers: [], error: problem(words.noPieceStored(value, sort), 0, value.length) }
  const types: Record<string, Type> = {}
  const parts: Record<string, Value> = {}
  for (const figure of KIT_FIGURES[sort]) {
    const text = Object.hasOwn(piece, figure.name) ? piece[figure.name] : undefined
    if (!isFilled(text)) continue
    const { type, value: read, error } = readFigure(figure, text)
    if (error) {
      const message = words.unreadableFigure(figure.name.replaceAll('_', ' '), sort, error.message)
      return { offers: [], error: problem(message, 0, value.length) }
    }
    if (!type || read === undefined) continue
    types[figure.name] = type
    parts[figure.name] = read
  }
  byReading(sort, parts)
  if (parts.intensity !== undefined && !types.intensity) {
    const cd = KIT_FIGURES.lamp.find(({ name }) => name === 'intensity') as KitFigure
    types.intensity = readFigure(cd, '1').type as Type
  }
  return { type: record(sort, types), value: parts, offers: [] }
}

/** Reads a given of any entry. */
export const readAnyGiven = (given: Given): GivenReading => (given.entry === 'kit' ? readKit(given) : readGiven(given))

/** A figure as it is typed into another cell: bare where both take the same unit, else with its own. */
function textFor(sort: KitSort, name: string, text: string, target: Given): string {
  const figure = KIT_FIGURES[sort].find((one) => one.name === name)
  if (!figure || (target.unit ?? '') === (figure.unit ?? '')) return text
  return readFigure(figure, text).readAs ?? text
}

/** Puts a piece into a sheet: the given takes a copy of it, and the givens it fills in take its figures. */
export function choosePiece(cells: readonly Cell[], given: Given, { name, figures }: ChosenPiece): Change {
  const { sort } = given
  const changes: Change[] = [{ do: 'replace', cell: { ...given, value: name, piece: { ...figures } } }]
  for (const [figure, filled] of Object.entries(given.fills ?? {})) {
    const text = Object.hasOwn(figures, figure) ? figures[figure] : undefined
    const target = cells.find((cell): cell is Given => cell.kind === 'given' && cell.name === filled)
    if (!sort || !target || !isFilled(text)) continue
    const value = textFor(sort, figure, text, target)
    changes.push({ do: 'replace', cell: { ...target, value, from: { kind: 'kit', text: value } } })
  }
  return { do: 'several', changes }
}
