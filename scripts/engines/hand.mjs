import { setTimeout as pause } from 'node:timers/promises'

const PATIENCE_MS = 60_000

/** What runs in the page, in any engine: it looks into every shadow root. Written as one function, since its text is sent. */
function inPage(act, options) {
  const roots = function* (root) {
    yield root
    for (const one of root.querySelectorAll('*')) if (one.shadowRoot) yield* roots(one.shadowRoot)
  }
  const all = (selector) => [...roots(document)].flatMap((root) => [...root.querySelectorAll(selector)])
  const deepText = (one) =>
    one.shadowRoot
      ? [...one.shadowRoot.childNodes].map(deepText).join(' ')
      : one.nodeType === Node.ELEMENT_NODE
        ? [...one.childNodes].map(deepText).join('')
        : one.nodeType === Node.TEXT_NODE
          ? one.data
          : ''
  const wordsOf = (one) => (one.getAttribute('aria-label') ?? deepText(one)).replace(/\s+/g, ' ').trim()
  const shows = (one) => one.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: false })
  const labelled = (label) => [
    ...all('label')
      .filter((one) => wordsOf(one) === label)
      .map((one) => one.control ?? one.getRootNode().getElementById(one.htmlFor)),
    ...all('input, textarea, select, [role=textbox]').filter((one) => one.getAttribute('aria-label') === label),
  ]
  const matches = ({ selector, text, label, inner, own }) => {
    const found = label === undefined ? all(selector) : labelled(label)
    const right = found.filter((one) => one && (!text || new RegExp(text).test(wordsOf(one))))
    const within = inner ? right.flatMap((one) => [...(one.shadowRoot ?? one).querySelectorAll(inner)]) : right
    return own ? within.filter((one) => new RegExp(own).test(wordsOf(one))) : within
  }
  const acts = {
    shown: () => matches(options).some(shows),
    count: () => matches(options).length,
    texts: () => matches(options).map((one) => deepText(one).replace(/\s+/g, ' ').trim()),
    values: () => matches(options).map((one) => one.value),
    /** The middle of the first match in sight, once it lies still; what covers it there is named. */
    place: () => {
      // What is below moves while a face is still being drawn.
      if (all('[aria-busy="true"]').length > 0) return undefined
      const one = matches(options).find(shows)
      if (!one) return undefined
      one.scrollIntoView({ block: 'center', inline: 'nearest', behavior: 'instant' })
      const box = one.getBoundingClientRect()
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
      let top = document.elementFromPoint(x, y)
      while (top?.shadowRoot) {
        const inner = top.shadowRoot.elementFromPoint(x, y)
        if (!inner || inner === top) break
        top = inner
      }
      const isFree = top && (one.contains(top) || top.contains(one) || one.getRootNode().host === top)
      return { x, y, cover: isFree ? undefined : top ? top.localName : 'nothing' }
    },
    problems: () => globalThis.evenfieldProblems ?? [],
    watch: () => {
      if (globalThis.evenfieldProblems) return
      const problems = []
      globalThis.evenfieldProblems = problems
      addEventListener('error', ({ message }) => {
        // A drawing laid out anew for its width is measured again in the next frame; that is no error.
        if (!message.startsWith('ResizeObserver loop')) problems.push(`error: ${message}`)
      })
      addEventListener('unhandledrejection', ({ reason }) => problems.push(`rejected: ${reason}`))
      document.addEventListener('securitypolicyviolation', (event) =>
        problems.push(`policy: ${event.effectiveDirective} ${event.blockedURI}`),
      )
    },
    /** The browser's own dialogue cannot be driven: what it would print stays laid out. */
    withoutDialogue: () => {
      globalThis.print = () => {
        document.documentElement.dataset.printed = 'yes'
      }
    },
    printed: () => {
      const sheet = document.querySelector('body > .job-sheet')
      return document.documentElement.dataset.printed === 'yes' && sheet ? sheet.textContent : undefined
    },
    afterPrint: () => void dispatchEvent(new Event('afterprint')),
    width: () => [document.documentElement.scrollWidth, document.documentElement.clientWidth],
    go: () => {
      location.hash = options
    },
    isOffline: () => navigator.serviceWorker?.controller !== null && navigator.serviceWorker?.controller !== undefined,
  }
  return acts[act]()
}

const named = ({ selector, text, label, inner, own }) =>
  label === undefined ? [selector, text, inner, own].filter(Boolean).join(' ') : `the field “${label}”`

/**
 * What a person does in a window, by mouse and keyboard, and what they see. Each waits until it can be done. What is meant
 * is named by a selector, a pattern of its text, a selector within it and a pattern of the text there (`selector`, `text`,
 * `inner`, `own`), or by the `label` of a field.
 */
export class Hand {
  constructor(window) {
    this.window = window
  }

  in(act, options = null) {
    return this.window.evaluate(inPage.toString(), act, options)
  }

  async until(what, look) {
    const end = Date.now() + PATIENCE_MS
    for (;;) {
      const seen = await look()
      if (seen !== undefined && seen !== null && seen !== false) return seen
      if (Date.now() > end) throw new Error(`waited ${PATIENCE_MS / 1000} s for ${what}, which did not come`)
      await pause(100)
    }
  }

  async go(url) {
    // A change of the fragment alone would not load the page anew.
    await this.window.go('about:blank')
    await this.window.go(url)
    await this.in('watch')
  }

  async reload() {
    await this.window.reload()
    await this.in('watch')
  }

  /** The middle of what is meant, once it is in sight, free, and lies still. */
  async place(what) {
    let before
    let cover
    return this.until(`${named(what)} to lie free`, async () => {
      const at = await this.in('place', what)
      const same = at && before && Math.abs(at.x - before.x) + Math.abs(at.y - before.y) < 1
      before = at
      cover = at?.cover
      return same && !at.cover ? at : undefined
    }).catch((error) => {
      throw new Error(cover ? `${error.message}; ${cover} covers it` : error.message)
    })
  }

  async press(what) {
    const { x, y } = await this.place(what)
    await this.window.press(x, y)
  }

  /** Types into a field in place of what is there. */
  async fill(label, text) {
    await this.press({ label })
    await this.window.key('a', 'Control')
    await this.window.type(text)
  }

  sees(what) {
    return this.until(named(what), async () => (await this.in('count', what)) > 0)
  }

  /** Nothing reaches past the side of the window. */
  async fit() {
    const [content, window] = await this.in('width')
    if (content > window) throw new Error(`the page is ${content} px wide in a window of ${window} px`)
  }

  /** Waits until the text of the first match, or the value of a field, is this. */
  async reads(what, wanted) {
    let last
    await this.until(`${named(what)} to read “${wanted}”`, async () => {
      last = (await this.in(what.label === undefined ? 'texts' : 'values', what))[0]
      return last === wanted
    }).catch((error) => {
      throw new Error(`${error.message}; it reads “${last}”`)
    })
  }
}
