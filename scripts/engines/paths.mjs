import assert from 'node:assert/strict'

/** What a person does first and most, each from an address of its own: `hand` acts and looks, `site` is the address. */

const DISTANCE = { selector: 'result-cell', text: '^Original to sensor', inner: '.figure' }

const saved = (hand) => hand.sees({ selector: 'sheet-head', text: 'Saved \\d\\d:\\d\\d' })
const row = (text) => ({ selector: 'build-cell', text })

async function figureOf(hand, label) {
  const [text = ''] = await hand.in('texts', { selector: 'result-cell', text: `^${label}`, inner: '.figure' })
  return text
}

/** A thin lens: original and sensor are f (2 + m + 1/m) apart, with m the magnification (any textbook of optics). */
const conjugate = (focal, magnification) => focal * (2 + magnification + 1 / magnification)

async function openFlatSheet(hand, site) {
  await hand.go(`${site}#new/flat-sheet`)
  await hand.reads(DISTANCE, '917')
}

/** In the head of a sheet, or in its menu where the window is too narrow for it. */
async function pressInHead(hand, text) {
  const item = { selector: 'sheet-head', inner: 'a, button', own: `^${text}$` }
  await hand.sees(item)
  if (!(await hand.in('shown', item))) await hand.press({ selector: 'sheet-head', inner: '.menu > summary' })
  await hand.press(item)
}

async function fillIn(hand, site) {
  await hand.go(site)
  await hand.sees({ selector: 'h1', text: '^What are you photographing\\?$' })
  await hand.press({ selector: 'a.answer', text: '^A flat sheet' })
  await hand.reads(DISTANCE, '917')
  await hand.fill('Focal length', '90')
  await hand.until('the distance to follow the lens', async () => {
    const scale = (await figureOf(hand, 'Magnification')).replace('1:', '')
    const expected = conjugate(90, 1 / Number(scale))
    return Math.abs(Number(await figureOf(hand, 'Original to sensor')) / expected - 1) < 0.005
  })
  await hand.press({ selector: 'given-cell', text: '^Glossy', inner: 'label, button', own: '^No$' })
  // Suggestions come from a worker.
  await hand.sees({ selector: 'suggestion-list', inner: 'button' })
  await hand.fill('Focal length', '9x')
  await hand.sees({ selector: 'given-cell', text: '^Focal length .*9x' })
  await hand.fill('Focal length', '60')
  await hand.reads(DISTANCE, '917')
  await hand.window.key('z', 'Control')
  await hand.until('one step back', async () => (await figureOf(hand, 'Original to sensor')) !== '917')
}

async function stand(hand, site) {
  await openFlatSheet(hand, site)
  await pressInHead(hand, 'At the stand')
  await hand.sees({ selector: 'check-first', text: 'Check before you shoot' })
  await hand.press({ selector: 'stand-view', inner: '.foot button', own: '^Start at step 1$' })
  await hand.sees({ selector: 'stand-view', inner: '.count', own: '^0 of 17 done$' })
  await hand.press({ selector: 'stand-view', inner: '.foot button', own: '^Done, next step$' })
  await hand.sees({ selector: 'stand-view', inner: '.count', own: '^1 of 17 done$' })
  // Whether the screen can stay on differs; that it is said does not.
  await hand.sees({ selector: 'stand-view', inner: '.wake', own: '^The screen ' })
  await hand.press({ selector: 'stand-switch', inner: 'button', own: '^All figures$' })
  await hand.sees({ selector: 'stand-overview', inner: 'li', own: '917' })
  await hand.fit()
}

async function build(hand, site) {
  await openFlatSheet(hand, site)
  await pressInHead(hand, 'Build')
  await hand.press({ selector: 'build-face', inner: '.add button', own: 'A result$' })
  await hand.fill('Label', 'Twice the lens')
  await hand.fill('Unit', 'mm')
  await hand.press({ selector: 'formula-field', inner: '#plain' })
  await hand.sees({ selector: 'formula-field', inner: '.cm-content' })
  await hand.window.type('2 * focal')
  await hand.window.key('Enter')
  await hand.reads({ ...row('Twice the lens'), inner: '.figure' }, '120')
  await hand.press({ ...row('Twice the lens'), inner: '.formula-text' })
  await hand.sees({ selector: 'formula-field', inner: '.cm-content' })
  await hand.window.key('End')
  await hand.window.type(' + 1 mm')
  await hand.window.key('Enter')
  await hand.reads({ ...row('Twice the lens'), inner: '.figure' }, '121')
  await hand.fit()
}

async function saveAndReload(hand, site) {
  await openFlatSheet(hand, site)
  await hand.fill('Focal length', '75')
  await hand.until('the distance to change', async () => (await figureOf(hand, 'Original to sensor')) !== '917')
  const distance = await figureOf(hand, 'Original to sensor')
  await hand.fill('Job', 'Reloaded maps')
  await saved(hand)
  await hand.reload()
  await hand.reads({ label: 'Focal length' }, '75')
  await hand.reads(DISTANCE, distance)
  await hand.go(site)
  await hand.sees({ selector: 'sheet-list', text: 'Reloaded maps' })
}

async function link(hand, site) {
  await openFlatSheet(hand, site)
  await hand.fill('Focal length', '80')
  await hand.until('the distance to change', async () => (await figureOf(hand, 'Original to sensor')) !== '917')
  const distance = await figureOf(hand, 'Original to sensor')
  await pressInHead(hand, 'Share')
  const shown = async () => (await hand.in('values', { selector: 'share-panel', inner: '#link' }))[0]
  const address = await hand.until('a link', async () => (await shown()) || undefined)
  assert.ok(address.startsWith(site), `The link is ${address.slice(0, 60)}.`)
  await hand.go(address)
  await hand.sees({ selector: 'copy-page', text: 'copy stand' })
  await hand.press({ selector: 'copy-page', inner: 'button', own: 'separate|^Save' })
  await hand.reads({ label: 'Focal length' }, '80')
  await hand.reads(DISTANCE, distance)
}

async function print(hand, site) {
  await openFlatSheet(hand, site)
  await pressInHead(hand, 'Share')
  await hand.in('withoutDialogue')
  await hand.press({ selector: 'share-panel', inner: 'button', own: '^Print$' })
  const text = await hand.until('the job sheet', () => hand.in('printed'))
  for (const part of [
    'A flat sheet on a copy stand',
    'Set the column to',
    '917',
    'Fail: 321 ppi of the 400 ppi required',
  ])
    assert.ok(text.includes(part), `The job sheet lacks “${part}”.`)
  if (hand.window.pdf) {
    const pages = /\/Type\s*\/Pages\b[^>]*?\/Count (\d+)/.exec(
      Buffer.from(await hand.window.pdf()).toString('latin1'),
    )?.[1]
    assert.ok(pages === undefined || Number(pages) > 1, `It prints ${pages} pages.`)
  }
  await hand.in('afterPrint')
  await hand.until('the page again', async () => (await hand.in('count', { selector: 'body > .job-sheet' })) === 0)
}

export const PATHS = [
  ['open a job and fill in', fillIn],
  ['at the stand', stand],
  ['Build: add a cell, edit a formula', build],
  ['save and reload', saveAndReload],
  ['a link opened', link],
  ['print', print],
]
