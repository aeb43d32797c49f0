import * as v from 'valibot'
import { id, name, text } from './fields.ts'

const MOST_STEPS = 200
/** The figures that one step may set. */
const MOST_SET = 60

/** What to do, in the order of work. */
export const steps = v.looseObject({
  kind: v.literal('steps'),
  id,
  title: v.optional(text),
  steps: v.pipe(
    v.array(
      v.looseObject({
        text,
        /** The given that takes what is read at this step, or the result that takes it as measured. */
        reading: v.optional(name),
        /** The figures that are set at this step. */
        sets: v.optional(v.pipe(v.array(name), v.maxLength(MOST_SET))),
        /** Its place in the order of work; a step of the phase `frames` counts the frames taken. */
        phase: v.optional(text),
        /** How many frames have been taken. */
        taken: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0))),
        done: v.optional(v.boolean()),
      }),
    ),
    v.maxLength(MOST_STEPS),
  ),
})
