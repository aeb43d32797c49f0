import { WHOLE as reader } from '../language/index.ts'
import type { Parts } from './parts.ts'
import { RENAMING } from './renaming.ts'
import { SCHEDULES } from './schedules.ts'

/** Everything at hand, the checker with it. */
export const WHOLE: Parts = { reader, schedules: SCHEDULES, renaming: RENAMING }
