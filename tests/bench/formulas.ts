import { FUNCTIONS, LIBRARY } from '../../src/functions/index.ts'
import { checkFormula, emptyScope } from '../../src/language/index.ts'
import { median, ms, timed } from './measure.ts'

const COUNT = 1_000
const ROUNDS = 9

/** Reading and checking formulas: the worked examples of every function, over and over, each a text of its own. */
export function formulas(): void {
  const examples = FUNCTIONS.flatMap(({ examples }) =>
    examples.filter(({ gives }) => gives).map(({ formula }) => formula),
  )
  const scope = emptyScope(LIBRARY)
  const texts = Array.from({ length: COUNT }, (_, i) => examples[i % examples.length] as string)
  const failing = texts.filter((text) => checkFormula(text, scope).root === undefined)
  if (failing.length > 0) throw new Error(`A worked example does not pass its check: ${failing[0]}`)
  const length = texts.reduce((sum, text) => sum + text.length, 0) / COUNT
  const times = Array.from({ length: ROUNDS }, () => timed(() => texts.map((text) => checkFormula(text, scope))))
  console.log(`Reading and checking ${COUNT} formulas of ${length.toFixed(0)} characters: ${ms(median(times))}`)
}
