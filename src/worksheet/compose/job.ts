import type { Worksheet } from '../schema/document.ts'
import type { ChosenPart } from './choose-parts.ts'
import { compose } from './compose.ts'
import type { PartLibrary } from './part-library.ts'
import type { Filled } from './sections.ts'

export const JOB_FORMAT = 'evenfield-job'

/** A job: the parts its sheet is composed of, and a worked example. */
export interface Job {
  readonly format: typeof JOB_FORMAT
  readonly title: string
  readonly job?: string
  readonly parts: readonly string[]
  /** The part that comes first where the job is put together with others. */
  readonly lead?: string
  readonly example: Readonly<Record<string, string>>
  readonly readings: Readonly<Record<string, string>>
  readonly rows?: Readonly<Record<string, readonly (readonly string[])[]>>
  readonly shelf?: object
}

/** Whether data read from a file is a job: a list of parts with an example. */
export const isJob = (data: unknown): data is Job =>
  typeof data === 'object' && data !== null && (data as { format?: unknown }).format === JOB_FORMAT

/** The parts a job chooses, its leading part among them. */
export const partsOfJob = ({ parts, lead }: Job): ChosenPart[] =>
  parts.map((part) => (part === lead ? { part, by: 'lead' } : { part }))

/** A job's sheet, opened worked out: with its example and the readings of the example. */
export function composeJob(library: PartLibrary, job: Job): Worksheet {
  const example = Object.entries({ ...job.example, ...job.readings })
  const givens = new Map(example.map(([name, value]): [string, Filled] => [name, { value, from: 'example' }]))
  const { worksheet } = compose(library, {
    title: job.title,
    ...(job.job === undefined ? {} : { job: job.job }),
    parts: partsOfJob(job),
    givens,
    rows: new Map(Object.entries(job.rows ?? {}).map(([name, rows]) => [name, { rows, from: 'example' }])),
  })
  return { ...worksheet, ...(job.shelf ? { shelf: job.shelf } : {}) } as Worksheet
}
