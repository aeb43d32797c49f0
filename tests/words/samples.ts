const COUNTS = [[1], [2], [12_000]]
const NAME = [['Focal length']]
const NAMES = ['Original', 'Border', 'Focal length', 'Sensor', 'Overlap', 'Lamp height']
const NONE = { pass: 0, marginal: 0, fail: 0, waiting: 0, errors: 0 }
const REASON = [['the network is down.']]

/** Values to call the functions of the catalogues with, by key; what they give is stored in the snapshot. */
export const SAMPLES: Readonly<Record<string, readonly (readonly unknown[])[]>> = {
  'app/common: checkSummaryText': [
    [NONE],
    [{ ...NONE, pass: 1 }],
    [{ ...NONE, pass: 12 }],
    [{ pass: 1, marginal: 1, fail: 1, waiting: 1, errors: 1 }],
    [{ pass: 2, marginal: 2, fail: 2, waiting: 2, errors: 2 }],
  ],
  'app/common: foldedText': [
    [NONE, 1],
    [NONE, 3],
    [{ pass: 1, marginal: 2, fail: 3, waiting: 4, errors: 1 }, 9],
  ],
  'app/common: cellsText': COUNTS,
  'app/common: when': [
    [new Date(2026, 2, 4, 9, 5), new Date(2026, 2, 4, 18, 0)],
    [new Date(2026, 2, 3, 9, 5), new Date(2026, 2, 4, 18, 0)],
    [new Date(2026, 1, 3, 9, 5), new Date(2026, 2, 4, 18, 0)],
  ],
  'app/build: buildWords.moved': [
    ['Focal length', 3, 12, 'Lens'],
    ['Focal length', 1, 12, ''],
  ],
  'app/build: buildWords.selected': COUNTS,
  'app/build: buildWords.pasted': COUNTS,
  'app/build: buildWords.copied': COUNTS,
  'app/build: buildWords.wereCut': COUNTS,
  'app/build: buildWords.removed': COUNTS,
  'app/build: buildWords.renamed': [[[['focal', 'focal_2']]], [NAMES.map((_, n) => [`x${n}`, `x${n}_2`])]],
  'app/compose: composeWords.found': COUNTS,
  'app/compose: composeWords.headings': [[['Frame']], [['Frame', 'Column', 'Light']]],
  'app/compose: composeWords.uses': [[['Original']], [NAMES], [[...NAMES, ...NAMES]]],
  'app/compose: composeWords.clashes': COUNTS,
  'app/compose: composeWords.givenIsComputed': [
    ['Lens height', '900 mm', 'Height'],
    ['Lens height', '', ''],
  ],
  'app/fill: fillWords.checksPass': COUNTS,
  'app/fill: fillWords.checksNeed': [
    [1, 1],
    [4, 3],
    [2, 0],
  ],
  'app/examples: exampleWords.stillExample': COUNTS,
  'app/examples: exampleWords.useAllAsk': COUNTS,
  'app/open: openWords.state': [
    ['error', 1],
    ['fail', 2],
    ['waiting', 9],
  ],
  'app/find: findWords.found': [[1, 3, 'Focal length', 'label']],
  'app/kit: kitWords.add': [['a lens'], ['an extension tube']],
  'app/kit: kitWords.added': [
    [1, 'kit.json'],
    [7, 'kit.json'],
  ],
  'app/paper: paperWords.measured': [
    ['measured 28 November 2026, 14:02 by LM', '917 mm', '2 mm more'],
    ['measured', '', ''],
  ],
  'app/paper: paperWords.needs': [[['Focal length']], [NAMES]],
  'cells/basic: basicWords.needs': [[['Focal length']], [NAMES]],
  'app/paper: paperWords.about': [[NAMES]],
  'app/paper: paperWords.originals': [
    [12, 0],
    [12, 3],
  ],
  'app/paper: paperWords.asMeasured': [
    ['Column', '917 mm'],
    ['Column', ''],
  ],
  'app/paper: paperWords.formulasNeed': [[['Border', 'Original']]],
  'app/paper: paperWords.rows': COUNTS,
  'app/share: shareWords.noLink': REASON,
  'app/share: shareWords.notPrinted': REASON,
  'app/sheet: sheetWords.saved': [[new Date(2026, 2, 4, 14, 2)]],
  'app/open: openWords.done': [[3, 12]],
  'app/shelf: shelfWords.found': COUNTS,
  'app/shelf: shelfWords.older': COUNTS,
  'app/stand: standWords.measured': [['2 mm more'], ['']],
  'app/stand: standWords.nearestMark': [['1/4.70 s']],
  'app/shelf: shelfWords.removed': NAME,
  'kit: kitFileWords.added': COUNTS,
  'kit: kitFileWords.unreadable': [
    ['pieces › 3 › name', 'a text is required'],
    ['', 'a text is required'],
  ],
}
