import type { SheetAdvice, TargetAdvice } from '../../worksheet/advice/plan.ts'
import type { Sheet } from '../../worksheet/index.ts'

/** A question about a sheet; the page that has the sheet answers it. */
export interface AdviceQuestion {
  readonly sheet: Sheet
  readonly target?: { readonly id: string; readonly text: string }
  readonly answer: (advice: Promise<SheetAdvice | TargetAdvice | undefined>) => void
}

declare global {
  interface HTMLElementEventMap {
    'advice-asked': CustomEvent<AdviceQuestion>
  }
}

function ask<Advice>(from: HTMLElement, question: Omit<AdviceQuestion, 'answer'>): Promise<Advice | undefined> {
  return new Promise((resolve, reject) => {
    const answer = (advice: Promise<unknown>): void => void advice.then((found) => resolve(found as Advice), reject)
    const detail = { ...question, answer }
    const event = new CustomEvent('advice-asked', { detail, bubbles: true, composed: true, cancelable: true })
    // A sheet that is only looked at has nobody to answer.
    if (from.dispatchEvent(event)) resolve(undefined)
  })
}

/** Advice on every check of a sheet. */
export const askForAdvice = (from: HTMLElement, sheet: Sheet): Promise<SheetAdvice | undefined> => ask(from, { sheet })

/** Plans that bring a result to a value, as typed. */
export const askForTarget = (
  from: HTMLElement,
  sheet: Sheet,
  id: string,
  text: string,
): Promise<TargetAdvice | undefined> => ask(from, { sheet, target: { id, text } })
