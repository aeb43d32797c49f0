import { expect, test } from 'vitest'
import { sectionsOf } from '../../../src/app/open/sections.ts'
import { stretchesOf } from '../../../src/app/sections/stretches.ts'
import type { Cell } from '../../../src/worksheet/index.ts'

const heading = (id: string, text: string, setUp?: string): Cell => ({
  kind: 'note',
  id,
  role: 'heading',
  text,
  ...(setUp === undefined ? {} : { set_up: setUp }),
})
const SET_UPS = [{ name: 'raking', title: 'Raking light' }]
const SECTIONS = sectionsOf([
  heading('frame', 'Frame'),
  heading('light', 'Light'),
  heading('raking_frame', 'Raking light: Frame', 'raking'),
  heading('raking_light', 'Raking light: Light', 'raking'),
  heading('raking_time', 'Exposure', 'raking'),
])
const seen = (current: string): readonly string[] => stretchesOf(SECTIONS, SET_UPS, current).map(({ label }) => label)

test('each section of the set-up one is in has its own stretch, and another set-up is one', () => {
  expect(seen('')).toEqual(['Frame', 'Light', 'Raking light'])
  expect(seen('light')).toEqual(['Frame', 'Light', 'Raking light'])
  expect(seen('raking_time')).toEqual(['First set-up', 'Raking light: Frame', 'Light', 'Exposure'])
})

test('no section is left out, and none is there twice', () => {
  for (const { id } of SECTIONS)
    expect(stretchesOf(SECTIONS, SET_UPS, id).flatMap(({ sections }) => sections)).toEqual(SECTIONS)
})

test('a sheet without set-ups has a stretch for each section', () => {
  const plain = sectionsOf([heading('a', 'A'), heading('b', ''), heading('c', 'C')])
  expect(stretchesOf(plain, [], 'b').map(({ label }) => label)).toEqual(['A', 'Untitled section', 'C'])
})
