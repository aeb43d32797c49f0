import type { Type, Value } from './types.ts'

/**
 * A parameter's type: a plain type, or any number, or a list of any numbers, or either of the two. Parameters of one
 * function that say `any` must agree in dimension with each other, except a list apart from them, whose items agree
 * among themselves alone. `any list` takes a list of any kind.
 */
export type ParameterType =
  | Type
  | { readonly kind: 'any' }
  | { readonly kind: 'list of any'; readonly apart?: boolean }
  | { readonly kind: 'any or list' }
  | { readonly kind: 'any list' }

/** The allowed values of a numeric parameter (of each item, for a list), in coherent SI. */
export interface Range {
  readonly above?: number
  readonly least?: number
  readonly below?: number
  readonly most?: number
  /** Whole numbers only. */
  readonly whole?: boolean
}

export interface Parameter {
  readonly name: string
  readonly type: ParameterType
  /** What it is, in a few words for completion and the guide. */
  readonly about: string
  readonly range?: Range
  /** The default as it would be typed in a formula: `0 mm`, `yes`, `"sRGB"`, `infinity`. */
  readonly default?: string
  /** The texts a text parameter takes. */
  readonly choices?: readonly string[]
  /** Other texts than the choices are taken too, as far as the function can read them. */
  readonly open?: boolean
}

/** A worked example; each is run as a test. */
export interface Example {
  readonly formula: string
  /** The result as one would type it: `27.6 mm`, `yes`, `"left"`, `{1 mm, 2 mm}`. */
  readonly gives?: string
  /** How near it must come, in the result's unit; without it, to 1 part in 10⁹. */
  readonly within?: string
  /** Instead of `gives`: words that the refusal must contain. */
  readonly refuses?: string
  readonly source?: string
}

export type Subject =
  | 'maths'
  | 'close-focus'
  | 'sampling'
  | 'depth'
  | 'exposure'
  | 'lighting'
  | 'squareness'
  | 'colour'
  | 'care'
  | 'run'
  | 'film'

/** What the guide says of a function. Computing does not need it, so the page fetches it only with the editor. */
export interface GuideText {
  readonly subject: Subject
  readonly about: string
  /** Other words by which it is looked for: the trade's synonyms, and both spellings where a stem does not match both. */
  readonly also?: readonly string[]
  /** The formula as text, in the symbols of the trade. */
  readonly formula: string
  /** A published source, or `common practice, no source`, or `derived`: with how, in a few words. */
  readonly source: string
  /** Where the formula is valid. */
  readonly validity?: string
  readonly examples: readonly Example[]
}

/** What checking and computing a call need to know of a function. */
export interface Callable {
  readonly name: string
  readonly parameters: readonly Parameter[]
  /** The last parameter may be given any number of times (once at least). */
  readonly variadic?: boolean
  /** The result's type, fixed or following from the arguments' types. */
  readonly result: Type | ((args: readonly Type[]) => Type)
  /** What to mind when using it; said where the formula is built. */
  readonly cautions?: readonly string[]
  /** What may harm a person or an original; said beside every result. */
  readonly safety?: readonly string[]
  /** Levels, such as exposure values, have no sum and no size: its arguments of any kind must be differences. */
  readonly differencesOnly?: boolean
  /** The result may be infinite (depth behind the plane in focus). */
  readonly mayBeInfinite?: boolean
  /** On plain numbers in coherent SI; throws Refusal for what no range can say. */
  readonly compute: (...args: never[]) => Value
  /** Instead of `compute` where the arithmetic depends on the arguments' dimensions. */
  readonly computeFor?: (args: readonly Type[]) => (...args: never[]) => Value
  /** A caution that applies to these arguments only. */
  readonly advise?: (...args: never[]) => string | undefined
  /** A warning about the way the arguments are written, from their types alone. */
  readonly warn?: (args: readonly Type[]) => string | undefined
}

/** One function of the language, all that the guide, completion, checker, terminal and tests know of it. */
export interface FunctionRecord extends Callable, GuideText {}

/** Why a function refuses its arguments: which one, and what would do. */
export class Refusal extends Error {
  constructor(
    message: string,
    readonly argument?: string,
  ) {
    super(message)
  }
}

/** The functions a formula may call, by name. */
export type Library = ReadonlyMap<string, Callable>

/** The guide's text for each function, by name. */
export type Guide = ReadonlyMap<string, GuideText>
