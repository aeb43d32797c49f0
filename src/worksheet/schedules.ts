import { checkSchedule, namesInSchedule } from './schedule-node.ts'
import { scheduleOutcome } from './schedule-outcome.ts'

/** What the engine makes of a schedule; a sheet without one does without. */
export const SCHEDULES = { namesIn: namesInSchedule, check: checkSchedule, outcome: scheduleOutcome }
