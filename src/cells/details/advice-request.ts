import type { Offer } from '../../worksheet/advice/offers.ts'
import type { SheetAdvice, TargetAdvice } from '../../worksheet/advice/plan.ts'
import type { Sheet } from '../../worksheet/index.ts'

/** A question about a sheet; the page that has the sheet answers it. */
export interface AdviceQuestion {
  readonly sheet: Sheet
  readonly target?: { readonly id: string; readonly text: string }
  /** Which parts would help is asked. */
  readonly offers?: true
  readonly answer: (advice: Promise<Advice | undefined>) => void
}

/** Parts that would make a failing check pass, by its name. */
export type Offers = ReadonlyMap<string, readonly Offer[]>
export type Advice = SheetAdvice | TargetAdvice | Offers

declare global {
  interface HTMLElementEventMap {
    'advice-asked': CustomEvent<AdviceQuestion>
    /** A part that is to be added to a set-up of the sheet. */
    'part-asked': CustomEvent<Pick<Offer, 'part' | 'setUp'>>
  }
}

function ask<Found extends Advice>(
  from: HTMLElement,
  question: Omit<AdviceQuestion, 'answer'>,
): Promise<Found | undefined> {
  return new Promise((resolve, reject) => {
    const answer = (advice: Promise<unknown>): void => void advice.then((found) => resolve(found as Found), reject)
    const detail = { ...question, answer }
    const event = new CustomEvent('advice-asked', { detail, bubbles: true, composed: true, cancelable: true })
    // Nothing answers for a sheet that is only shown.
    if (from.dispatchEvent(event)) resolve(undefined)
  })
}

/** Advice on every check of a sheet. */
export const askForAdvice = (from: HTMLElement, sheet: Sheet): Promise<SheetAdvice | undefined> => ask(from, { sheet })

/** The parts that would make failing checks of a sheet pass. */
export const askForOffers = (from: HTMLElement, sheet: Sheet): Promise<Offers | undefined> =>
  ask(from, { sheet, offers: true })

/** Plans that bring a result to a value, as typed. */
export const askForTarget = (
  from: HTMLElement,
  sheet: Sheet,
  id: string,
  text: string,
): Promise<TargetAdvice | undefined> => ask(from, { sheet, target: { id, text } })
