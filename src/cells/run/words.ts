import { agree, andMore, count, plural } from '../../units/plural.ts'
import { PLAN_HEADS } from '../../worksheet/run/words.ts'

/** The words of the plan of a run. */
export const runWords = {
  noTable: 'Nothing is planned yet. In Build, choose the table that lists the originals.',
  missing: 'Nothing is planned yet. These are required:',
  plannedWithout: 'Planned without:',
  planRest: 'Plan what is left',
  order: 'In order of work: within each exposure from the lowest camera to the highest, so that it moves one way.',
  nothingLeft: 'Nothing is left to do.',
  noOriginals: 'No original that can be planned is listed yet.',
  planning: 'Planning',
  planningAgain: 'Planning again',
  setUp: (number: number): string => `Set-up ${number}`,
  magnification: PLAN_HEADS.magnification,
  onColumn: 'Column',
  originalToSensor: PLAN_HEADS.track,
  gives: (sampling: string): string => `gives ${sampling}`,
  done: 'done',
  originalsDone: (originals: number, done: number): string =>
    done > 0 ? `${plural(originals, 'original')}, ${count(done)} done` : plural(originals, 'original'),
  tiles: (title: string, across: number, down: number, turned: boolean, setUp: number): string =>
    `${title}: ${across} × ${down} frames${turned ? ', turned' : ''}, set-up ${setUp}`,
  moreTiled: (n: number): string => `${andMore(n)}, in their set-ups above`,
  tiled: (n: number): string => `Too large for one frame: ${plural(n, 'original')}`,
  unplanned: (n: number): string => `Cannot be planned: ${plural(n, 'original')}`,
  row: (number: number): string => `Row ${number}`,
  inRow: (number: number): string => `, row ${number}`,
  more: andMore,
  pages: (pages: number, frames: string): string => `${count(pages)} sides or pages, ${frames}`,
  column: (height: string): string => `column ${height}`,
  nextOriginals: (shown: number, of: number): string => `${count(shown)} more of ${count(of)}`,
  lastOriginals: (n: number): string => `The last ${count(n)}`,

  total: 'Total',
  totalLeft: 'Total of what is left',
  soFar: 'So far',
  originals: PLAN_HEADS.originals,
  setUps: 'Set-ups',
  frames: PLAN_HEADS.frames,
  atOriginals: 'Time at the originals',
  changingSetUp: 'Time to change set-ups',
  breaks: 'Time for breaks',
  totalTime: 'Total time',
  storage: 'Data',
  doneLabel: 'Done',
  doneOf: (done: number, of: number): string => `${count(done)} of ${count(of)}`,
  timeTaken: (n: number, planned: string): string => `Time taken for ${plural(n, 'original')}, planned ${planned}`,
  framesTaken: (n: number, planned: number): string =>
    `Frames taken for ${plural(n, 'original')}, planned ${count(planned)}`,
  asPlanned: ', as planned',
  morePercent: (percent: number): string => `, ${percent} % more`,
  lessPercent: (percent: number): string => `, ${percent} % less`,
  left: 'Left',
  leftAtRate: 'Left at the current rate',
  noRate: (enough: number): string =>
    `The current rate is shown once ${count(enough)} ${agree(enough, 'original has its', 'originals have their')} time or frames.`,
}
