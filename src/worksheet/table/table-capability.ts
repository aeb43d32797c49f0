import { checkSchedule, namesInSchedule } from './table-node.ts'
import { scheduleOutcome } from './table-outcome.ts'

/** What the engine makes of a schedule; a sheet without one does without. */
export const SCHEDULES = { namesIn: namesInSchedule, check: checkSchedule, outcome: scheduleOutcome }
