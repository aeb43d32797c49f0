import type { Reader } from '../../language/index.ts'
import type { RENAMING } from '../renaming/renaming.ts'
import type { SCHEDULES } from '../table/table-capability.ts'

/** What a sheet works with that need not be there in full from the start. */
export interface Parts {
  readonly reader: Reader
  /** A schedule waits without it. */
  readonly schedules?: typeof SCHEDULES
  /** Without it a sheet is filled in, but nothing in it renamed. */
  readonly renaming?: typeof RENAMING
}
