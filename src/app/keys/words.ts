import type { CheckState } from '../../cells/shared/check-sign.ts'

type Key = readonly [keys: string, effect: string]

export const keysWords = {
  onMac: 'On a Mac, use Cmd for Ctrl and Option for Alt.',
  signs: 'Show f/, 1/, × and ± as buttons below the page while you type',
  signsOfChecks: 'Beside a check, and in the head for all of them',
  states: {
    fail: 'its condition is not met; suggestions are below it',
    marginal: 'its condition is met, but by less than its margin',
    pass: 'its condition is met',
    waiting: 'it needs figures that are not filled in yet',
    error: 'its formula, or one it depends on, has an error',
  } satisfies Record<CheckState, string>,
  resting: 'dashed: it is computed from figures of the example',
  groups: [
    [
      'Everywhere in a sheet',
      [
        ['?', 'opens this list, outside a field; pressed again, closes it'],
        ['Ctrl Z', 'undoes the last change'],
        ['Shift Ctrl Z, Ctrl Y', 'redoes it'],
        ['Ctrl F', 'finds in the sheet; pressed again, opens the browser’s own search'],
        ['Shift Alt F, S, B', 'switches to Fill in, At the stand or Build, at the same cell'],
        ['Ctrl P', 'prints the job sheet'],
      ],
    ],
    [
      'While finding',
      [
        ['Enter', 'goes to the next place'],
        ['Shift Enter', 'goes to the previous place'],
        ['Escape', 'closes the search and stays at the place found'],
      ],
    ],
    [
      'In Fill in and At the stand',
      [
        ['Space', 'ticks a step, or clears its tick'],
        ['← ↑ → ↓', 'moves a lamp of a drawing; with Shift, ten times as far'],
      ],
    ],
    [
      'In a table',
      [
        ['Enter', 'goes to the next row; after the last, to a new one'],
        ['← ↑ → ↓', 'goes from field to field'],
        ['Page Up, Page Down', 'goes ten rows up or down'],
        ['Ctrl Home, Ctrl End', 'goes to the first or the last row'],
        ['Alt N', 'adds a row below'],
        ['Alt R', 'removes the row'],
        ['Alt S', 'sorts the rows by this column; pressed again, the other way round'],
        ['Alt ↑, Alt ↓', 'moves the row up or down'],
        ['Shift Alt ↓', 'fills the empty fields below with the same text'],
      ],
    ],
    [
      'In Build, on a cell',
      [
        ['↑, ↓, Home, End', 'goes from cell to cell, to the first or the last'],
        ['G R C N H D S T', 'adds a given, result, check, note, heading, drawing, steps or table below'],
        ['A V U P F', 'adds a range, variants, run, picture or function below'],
        ['L', 'types a cell as a line, such as “border = 10 mm” or “name = formula”'],
        ['Alt O', 'opens the cell, or closes it'],
        ['Alt N', 'adds a cell of the same kind below'],
        ['Shift Alt N', 'chooses the kind of cell to add below'],
        ['Alt R', 'removes the cell, or the selected cells'],
        ['Alt ↑, Alt ↓', 'moves the cell, or the selected cells, up or down'],
        ['Shift Alt ↑, Shift Alt ↓', 'moves the whole section up or down'],
        ['Shift ↑, Shift ↓', 'selects cells from here on'],
        ['Ctrl A', 'selects all cells'],
        ['Alt C', 'clears the selection'],
        ['Ctrl C, Ctrl X', 'copies or cuts the cell, or the selected cells, as text'],
        ['Ctrl V', 'pastes copied cells below; lines such as “name = formula” too'],
      ],
    ],
    [
      'In a list of steps',
      [
        ['Enter', 'adds a step below'],
        ['Ctrl V', 'makes a step of each pasted line'],
      ],
    ],
    [
      'In a formula',
      [
        ['Enter', 'saves it and leaves the field'],
        ['Escape', 'restores what was there'],
        ['Ctrl Space', 'suggests names, functions and units'],
      ],
    ],
  ] as const satisfies readonly (readonly [where: string, keys: readonly Key[]])[],
}
