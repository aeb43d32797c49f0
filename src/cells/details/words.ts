/** Sentences beside suggestions. */
export const GIVES = (figure: string): string => `It gives ${figure}.`
export const INCREASE_MARGIN = 'Increase margin'
export const TARGET_VALUE = 'Target value'
export const NO_PLAN_FOR_TARGET = 'No change within reach gives this value.'
