import { expect } from 'vitest'
import { provoked, test } from './harness.ts'

const WANTED = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "object-src 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types lit-html evenfield',
]

test('the built page carries a policy that allows only its own files', async ({ open }) => {
  const { page } = await open()
  const content = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content')
  const directives = (content ?? '').split('; ')
  for (const directive of WANTED) expect(directives).toContain(directive)
  expect(content).not.toMatch(/unsafe-|https?:|\*/)
})

test('the header says the same as the page, and that no other site may frame it', async ({ open }) => {
  const { page } = await open()
  const content = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content')
  const header = (await page.reload())?.headers()['content-security-policy']
  expect(header).toBe(`${content}; frame-ancestors 'none'`)
})

test('the app starts without a refusal', async ({ open }) => {
  const { page } = await open()
  await expect.poll(() => page.evaluate(() => customElements.get('evenfield-app') !== undefined)).toBe(true)
})

test('the page holds no inline script', async ({ open }) => {
  const { page } = await open()
  expect(await page.locator('script:not([src])').count()).toBe(0)
})

for (const [name, keep] of [
  ['the policy in the page alone', 'meta'],
  ['the policy in the header alone', 'header'],
] as const)
  test(`${name} stops an inline script in the page's own text`, async ({ open }) => {
    const visit = await open()
    const { page, context, site } = visit
    await context.route(site, async (route) => {
      const response = await route.fetch()
      const headers = { ...response.headers() }
      let body = (await response.text()).replace('</body>', '<script>globalThis.ran = true</script></body>')
      if (keep === 'meta') delete headers['content-security-policy']
      else body = body.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '')
      delete headers['content-length']
      await route.fulfill({ status: 200, headers, body })
    })
    await page.goto(site)
    expect(await page.locator('script:not([src])').count()).toBe(1)
    expect(await page.evaluate(() => 'ran' in globalThis)).toBe(false)
    await provoked(visit, /inline/)
  })

test('eval and similar functions are refused', async ({ open }) => {
  const visit = await open()
  // Through a timer: what the debugger itself evaluates is let past the policy.
  const outcomes = await visit.page.evaluate(
    () =>
      new Promise<string[]>((settle) =>
        setTimeout(() => {
          const tries: (() => unknown)[] = [
            // biome-ignore lint/security/noGlobalEval: that it is refused is the point.
            () => globalThis.eval('1 + 1'),
            () => new Function('return 1 + 1')(),
            () => {
              document.createElement('div').innerHTML = '<b>text</b>'
            },
            () =>
              document.body.append(Object.assign(document.createElement('script'), { text: 'globalThis.ran = true' })),
          ]
          settle(
            tries.map((attempt) => {
              try {
                attempt()
                return 'done'
              } catch (error) {
                return (error as Error).name
              }
            }),
          )
        }),
      ),
  )
  expect(outcomes).toEqual(['EvalError', 'EvalError', 'TypeError', 'TypeError'])
  expect(await visit.page.evaluate(() => 'ran' in globalThis)).toBe(false)
  await provoked(visit, /TrustedScript|TrustedHTML|trusted-types/)
  visit.provoked.push(/Evaluating a string as JavaScript/)
})

test('a script or a picture from another origin is not asked for', async ({ open }) => {
  const visit = await open()
  await visit.page.evaluate(() => {
    document.body.append(Object.assign(new Image(), { src: 'http://127.0.0.1:9/picture.png' }))
  })
  await provoked(visit, /^policy: img-src/)
  visit.provoked.push(/Loading the image|^request: asked http:..127/)
})
