import { fileURLToPath } from 'node:url'
import { expect } from 'vitest'
import { test, violations } from './harness.ts'
import { given, pressInHead } from './head.ts'

const file = fileURLToPath(new URL('../worksheet/schema/examples/version-1/flat-sheet.json', import.meta.url))

test('a sheet of an earlier version opens unchanged, and is arranged by parts in one step of undo', async ({
  open,
}) => {
  const { page } = await open()
  await page.locator('#file').setInputFiles(file)
  await given(page, 'Border left round it').waitFor()
  await given(page, 'Lens').fill('75')
  const arrange = page.getByRole('button', { name: 'Arrange by parts' })
  await arrange.click()
  await page.getByRole('heading', { name: 'Arrange by parts' }).waitFor()
  await page.getByText('Your figures, measured values and added cells stay. One Undo reverses it.').waitFor()
  expect(await violations(page)).toEqual([])
  await arrange.click()

  await given(page, 'Border around the original').waitFor()
  expect(await given(page, 'Focal length').inputValue()).toMatch(/^75/)
  expect(await given(page, 'Original').inputValue()).toBe('420 x 297')
  // What was not typed is still the example’s.
  await page.locator('example-bar p').waitFor()
  expect(await arrange.count()).toBe(0)

  await pressInHead(page, 'Undo')
  await given(page, 'Border left round it').waitFor()
  await arrange.waitFor()
})
