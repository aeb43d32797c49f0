import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import type { Cell } from '../../src/worksheet/index.ts'
import { given as makeGiven, result as makeResult } from '../worksheet/make.ts'
import { test } from './harness.ts'
import { given, pressInHead } from './head.ts'
import { openSheet } from './open-sheet.ts'

const result = (page: Page, label: string): Locator =>
  page.locator('result-cell').filter({ hasText: label }).locator('.figure')

test('the start page asks what is photographed, and opens the job for it', async ({ open }) => {
  const { page } = await open()
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('What are you photographing?')
  await page.getByRole('link', { name: /^A flat sheet/ }).click()
  await page.locator('fill-face').waitFor()
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toMatch(/copy stand/)
})

test('every result changes at each key, and the head says the state of the checks', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  const lens = given(page, 'Focal length')
  await lens.waitFor()
  await expect.poll(() => result(page, 'Original to sensor').textContent()).toBe('917')
  await lens.press('End')
  await lens.press('Backspace')
  await expect.poll(() => result(page, 'Original to sensor').textContent()).not.toBe('917')
  await lens.press('5')
  await expect.poll(() => lens.inputValue()).toBe('65')
  await expect.poll(() => result(page, 'Original to sensor').textContent()).toBe('993')
  await page
    .locator('sheet-head')
    .filter({ hasText: /fails?/ })
    .waitFor()
})

test('emptied givens make results wait and say for what', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Focal length').fill('')
  const cell = page.locator('result-cell').filter({ hasText: 'Original to sensor' })
  await cell.filter({ hasText: /Needs Focal length/ }).waitFor()
})

test('text that cannot be read is reported with what, where and how to fix it, and stays', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  const border = given(page, 'Border around the original')
  await border.fill('10 mmm')
  const cell = page.locator('given-cell').filter({ hasText: 'Border around the original' })
  await cell.locator('mark', { hasText: 'mmm' }).waitFor()
  await expect.poll(() => border.inputValue()).toBe('10 mmm')
  await expect.poll(() => border.getAttribute('aria-invalid')).toBe('true')
  await cell
    .getByRole('button', { name: /10 mm|“mm”|mm/ })
    .first()
    .click()
  await expect.poll(() => border.inputValue()).toBe('10 mm')
  await expect.poll(() => border.getAttribute('aria-invalid')).toBe('false')
})

test('a choice shows what was chosen, and after Undo that nothing was', async ({ open }) => {
  const { page } = await open()
  const options = ['one page at a time', 'the whole opening']
  const taken = { label: 'Taken in one frame', entry: 'choice', options } as const
  await openSheet(page, [makeGiven('taken', '', taken), makeResult('chosen', 'taken')])
  const list = page.getByRole('combobox', { name: 'Taken in one frame' })
  for (const option of options) {
    await list.selectOption(option)
    await expect.poll(() => result(page, 'chosen').textContent()).toBe(option)
    expect(await list.inputValue()).toBe(option)
    await pressInHead(page, 'Undo')
    await expect.poll(() => list.inputValue()).toBe('')
  }
})

test('a bare number is shown as it is read, and another reading is one press away', async ({ open }) => {
  const { page } = await open({ path: '#new/empty/build' })
  await page
    .getByRole('button', { name: /^A given/ })
    .first()
    .click()
  await page.getByLabel('Label').fill('Time')
  await page.getByLabel('Unit').fill('1/ s')
  await pressInHead(page, 'Fill in')
  await given(page, 'Time').fill('125')
  await page.getByRole('button', { name: /^Read as 1\/125 s/ }).click()
  await expect.poll(() => given(page, 'Time').inputValue()).toBe('1/125 s')
})

test('fine adjustments are folded away, and count when they are filled in', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  const folded = page.locator('details', { hasText: 'Fine adjustments' }).first()
  await folded.waitFor()
  expect(await folded.evaluate((one: HTMLDetailsElement) => one.open)).toBe(false)
  await folded.locator('summary').press('Enter')
  await folded.locator('given-cell').first().waitFor({ state: 'visible' })
})

test('pressing the state of the checks leads to the check that fails', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet', height: 500 })
  await page.getByRole('button', { name: /fails?/ }).click()
  const failing = page.locator('check-cell').filter({ hasText: 'Fail' }).first()
  await expect.poll(() => failing.evaluate((one) => one.matches(':focus'))).toBe(true)
})

test('in a long sheet what is out of sight is rendered, follows a change, and shows what rests on an example', async ({
  open,
}) => {
  const { page } = await open()
  const from = { kind: 'example', text: '3' } as const
  const sections = Array.from({ length: 20 }, (_, at): Cell[] => [
    { kind: 'note', id: `n${at}`, role: 'heading', text: `Part ${at}` },
    ...Array.from({ length: 20 }, (_, k) => makeResult(`r${at}_${k}`, `first * ${20 * at + k + 1}`)),
  ])
  await openSheet(page, [makeGiven('first', '3', { label: 'First', from }), ...sections.flat()])
  const last = page.locator('result-cell').filter({ hasText: 'r19_19' })
  await expect.poll(() => last.locator('.figure').textContent()).toBe('1200')
  expect(await page.locator('result-cell').count()).toBe(400)
  expect(await last.locator('.rests').count()).toBe(1)
  const first = page.getByLabel('First', { exact: true })
  await first.press('Enter')
  await expect.poll(() => last.locator('.rests').count()).toBe(0)
  await first.fill('5')
  await expect.poll(() => last.locator('.figure').textContent()).toBe('2000')
})

test('a mistake that blocks several checks is reported once in each section, and the others are a line', async ({
  open,
}) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.getByLabel('Border around the original').fill('10 mmm')
  const first = page.locator('fill-face .band').first()
  const blocked = first.locator('check-cell').filter({ hasText: 'Fix “Border around the original” first.' })
  await expect.poll(() => blocked.count()).toBeGreaterThan(1)
  await expect.poll(() => blocked.filter({ visible: true }).count()).toBe(1)
  const others = (await blocked.count()) - 1
  await first
    .locator('summary')
    .filter({ hasText: `${others} more checks have the same error` })
    .click()
  await expect.poll(() => blocked.filter({ visible: true }).count()).toBe(others + 1)
})

test('the line under the givens offers an example’s figure until another is typed', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  const field = given(page, 'Focal length')
  await field.focus()
  const line = page.locator('.hint-line').filter({ hasText: 'Focal length.' })
  await line.getByText('Use 60 mm').waitFor()
  await field.fill('65')
  await expect.poll(() => line.getByText('Use 60 mm').count()).toBe(0)
  await line.waitFor()
})

test('an answer or a figure like the example’s is the user’s own once it is given', async ({ open }) => {
  const { page } = await open()
  const from = (value: string) => ({ from: { kind: 'example', text: value } }) as const
  await openSheet(page, [
    makeGiven('glossy', 'yes', { entry: 'yes or no', label: 'Glossy', ...from('yes') }),
    makeGiven('focal', '60', { unit: 'mm', label: 'Focal length', ...from('60') }),
  ])
  const left = page.locator('example-bar')
  await left.getByText('2 figures are still the example’s').waitFor()
  await page.locator('given-cell').filter({ hasText: 'Glossy' }).getByText('Yes', { exact: true }).click()
  await left.getByText('1 figure is still the example’s').waitFor()
  const focal = given(page, 'Focal length')
  await focal.press('Control+a')
  await focal.pressSequentially('60')
  await left.getByText('still the example’s').waitFor({ state: 'detached' })
  // A second press of the same answer changes nothing, so that what is undone is the figure.
  await page.locator('given-cell').filter({ hasText: 'Glossy' }).getByText('Yes', { exact: true }).click()
  await pressInHead(page, 'Undo')
  await left.getByText('1 figure is still the example’s').waitFor()
})

test('the option an example has is the user’s own once it is chosen in the open list', async ({ open }) => {
  const { page } = await open()
  const cells = ['Face', 'Support'].map((label) =>
    makeGiven(label.toLowerCase(), 'flat', {
      ...{ entry: 'choice', options: ['flat', 'wavy'], label },
      from: { kind: 'example', text: 'flat' },
    }),
  )
  await openSheet(page, cells)
  const list = (label: string): Locator => page.locator('given-cell').filter({ hasText: label }).locator('select')
  await page.locator('example-bar').getByText('2 figures are still the example’s').waitFor()
  await list('Face').press('Space')
  await page.keyboard.press('Escape')
  await list('Support').press('Space')
  await page.keyboard.press('Enter')
  await page.locator('example-bar').getByText('1 figure is still the example’s').waitFor()
  // Opened and closed again, a list says nothing.
  expect(await page.locator('given-cell .example').filter({ hasText: 'Face' }).count()).toBe(1)
})

test('a size typed for one quantity offers to make the field one of a size', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, [makeGiven('face', '30', { unit: 'mm', label: 'Face' })])
  await given(page, 'Face').fill('420 x 297')
  await page.getByRole('button', { name: 'Make it a size' }).click()
  await page.getByText('type one of the two').waitFor({ state: 'detached' })
  await expect.poll(() => given(page, 'Face').inputValue()).toBe('420 x 297')
})
