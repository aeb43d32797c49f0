import { WHOLE as reader } from '../../language/index.ts'
import type { Parts } from '../engine/capabilities.ts'
import { SCHEDULES } from '../table/table-capability.ts'
import { RENAMING } from './renaming.ts'

/** Everything at hand, the checker with it. */
export const WHOLE: Parts = { reader, schedules: SCHEDULES, renaming: RENAMING }
