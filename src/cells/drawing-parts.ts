import { type Cell, isNamed } from '../worksheet/index.ts'

/** What a set-up drawing can be fed with, and what each is called. */
export const SET_UP_PARTS: readonly (readonly [part: string, label: string])[] = [
  ['original_width', 'Width of the original'],
  ['original_height', 'Height of the original'],
  ['original_thickness', 'Thickness of the original'],
  ['field_width', 'Width of the field'],
  ['field_height', 'Height of the field'],
  ['original_to_sensor', 'Original to sensor'],
  ['lens_to_original', 'Lens to original'],
  ['clear_distance', 'Clear distance'],
  ['column_height', 'Mark on the column, above the board'],
  ['entrance_distance', 'Entrance pupil to original'],
  ['lamps', 'Lamps, a list'],
  ['mirror_zone', 'Half-width of the mirror zone at the lamps’ height'],
]

/** Fed at first from the cells that bear the names of its parts. */
export function setUpFrom(cells: readonly Cell[]): Record<string, string> {
  const names = new Set(cells.filter(isNamed).map(({ name }) => name))
  return Object.fromEntries(SET_UP_PARTS.flatMap(([part]) => (names.has(part) ? [[part, part]] : [])))
}
