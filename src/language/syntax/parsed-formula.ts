import type { Tree } from '@lezer/common'
import type { Diagnostic } from '../values/diagnostic.ts'
import { checkCharacters, MAX_FORMULA_LENGTH, oneSign } from './confusable-characters.ts'
import { parser } from './parser.ts'

/** A formula read once, for its names and for any number of checks in different scopes. */
export interface ParsedFormula {
  readonly text: string
  /** The text with one sign for each that Unicode encodes twice. */
  readonly evened: string
  /** What can be said before any tree; where there is anything, the tree serves names alone. */
  readonly looked: readonly Diagnostic[]
  /** Undefined where the text is too long to be parsed. */
  readonly tree: Tree | undefined
}

/** Parses the text of a formula; what is wrong with it is marked in its tree. */
export function parseFormula(text: string): ParsedFormula {
  const evened = oneSign(text)
  const tree = text.length > MAX_FORMULA_LENGTH ? undefined : parser.parse(evened)
  return { text, evened, looked: checkCharacters(evened), tree }
}

/** A formula’s tree, parsed where only its text is there. */
export const parsed = (formula: string | ParsedFormula): ParsedFormula =>
  typeof formula === 'string' ? parseFormula(formula) : formula
