import type { NumberType, RecordValue, Value } from '../../language/index.ts'
import type { DisplayUnit } from '../../units/index.ts'
import { labelOf } from '../document/label.ts'
import type { Sheet } from '../editing/sheet.ts'
import { VALUE } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import type { Given } from '../schema/document.ts'
import { figureIn } from './format-input.ts'
import { RangeInputError } from './range-values.ts'
import { typedDisplayUnit, typedUnit } from './typed-unit.ts'
import * as words from './words.ts'

/** What runs through a range: a given that holds one quantity, or a side of a given that holds a size. */
export interface RangeTarget {
  readonly node: Node
  /** The given as one that holds a single quantity, under the label of what is varied. */
  readonly given: Given
  /** Undefined where it is not known what kind of quantity it is. */
  readonly type: NumberType | undefined
  /** As it is now, in coherent SI; undefined where it is not known. */
  readonly present: number | undefined
  /** The given's value with another figure in the place of this one. */
  readonly valueWith: (value: number) => Value
  /** The given filled in with another figure, as typed. */
  readonly filledWith: (text: string) => Given
}

const SIDES = ['width', 'height'] as const
type Side = (typeof SIDES)[number]

/** Finds what is varied by its name, such as `focal` or `original.width`. Throws RangeInputError. */
export function rangeTarget(sheet: Sheet, of: string | undefined): RangeTarget {
  if (of === undefined) throw new RangeInputError(words.chooseGiven)
  const [name, side] = of.split('.') as [string, Side | undefined]
  const cell = sheet.named(name)
  if (!cell) throw new RangeInputError(words.noCell(name))
  if (cell.kind !== 'given') throw new RangeInputError(words.notAGiven(name))
  const { engine } = sheet
  const node = engine.named(name) as Node
  const now = engine.state(node) === VALUE ? engine.value(node) : undefined
  if (cell.entry === 'size') {
    if (!side || !SIDES.includes(side)) throw new RangeInputError(words.chooseSide(labelOf(cell), name))
    return sideOf(node, cell, side, now)
  }
  if (side) throw new RangeInputError(words.notASize(labelOf(cell), side))
  return {
    node,
    given: cell,
    type: node.type?.kind === 'number' ? node.type : undefined,
    present: typeof now === 'number' ? now : undefined,
    valueWith: (value) => value,
    filledWith: (text) => ({ ...cell, value: text }),
  }
}

/** A side of a size, the other side as it is now. */
function sideOf(node: Node, cell: Given, side: Side, now: Value | undefined): RangeTarget {
  const size = now as RecordValue | undefined
  const type = node.type?.kind === 'record' ? node.type.parts[side] : undefined
  if (!size || type?.kind !== 'number') throw new RangeInputError(words.fillSizeFirst(labelOf(cell)))
  const typed = node.unit ? undefined : typedUnit(cell.value)
  const unit = node.unit ?? typedDisplayUnit(cell.value)
  const other = SIDES.find((one) => one !== side) as Side
  const written = (value: number): string => `${unit ? sideText(value, unit) : value}`
  const suffixed = (text: string): string => (typed ? `${text} ${typed.unit}` : text)
  const { least: _, most: __, ...rest } = cell
  return {
    node,
    given: {
      ...rest,
      entry: 'quantity',
      label: `${labelOf(cell)}, ${side}`,
      value: suffixed(written(size[side] as number)),
    },
    type,
    present: size[side] as number,
    valueWith: (value) => ({ ...size, [side]: value }),
    filledWith: (text) => {
      const sides = { [side]: text, [other]: written(size[other] as number) } as Record<Side, string>
      return { ...cell, value: suffixed(`${sides.width} x ${sides.height}`) }
    },
  }
}

const sideText = (value: number, unit: DisplayUnit): string =>
  String(Number(figureIn(value, unit).figure.toPrecision(12)))
