import { Refusal } from '../../language/index.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Run } from '../schema/document.ts'
import { feedOf, type RunFeed } from './feed.ts'
import { RUN_INPUTS } from './inputs.ts'
import { planRun, type RunPlan } from './plan.ts'

/** A run cell planned: its plan, or what is missing for one. */
export interface PlannedRun {
  readonly feed: RunFeed
  readonly plan: RunPlan | undefined
}

/** Plans a run cell from the sheet as it is. Takes about a second for 100,000 originals: not for every key. */
export function runOf(sheet: Sheet, run: Run, options: { readonly left?: boolean } = {}): PlannedRun {
  const feed = feedOf(sheet.engine, run)
  if (!feed.rig) return { feed, plan: undefined }
  try {
    return { feed, plan: planRun(feed.list, feed.rig, { left: options.left ?? run.left === true, later: feed.later }) }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const input = RUN_INPUTS.find(({ name }) => name === error.argument) ?? RUN_INPUTS[0]
    return {
      feed: { ...feed, missing: [{ input: input as (typeof RUN_INPUTS)[number], why: error.message }] },
      plan: undefined,
    }
  }
}
