import type { Page } from 'playwright-core'

/**
 * Moves the focus to each control that was numbered, and names those whose ring is over text: over a neighbour's, or over
 * the edge of their own.
 */
export const ringsOverText = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const above = (node: Node): Element | undefined => {
      const up = (node as Element).assignedSlot ?? node.parentNode
      return up instanceof ShadowRoot ? up.host : up instanceof Element ? up : undefined
    }
    const ancestors = function* (node: Node): Generator<Element> {
      for (let at = above(node); at; at = above(at)) yield at
    }
    /** What stays while the rest scrolls below it. */
    const layer = (node: Node): Element | undefined =>
      [...ancestors(node)].find((one) => /sticky|fixed/.test(getComputedStyle(one).position))
    interface Box {
      left: number
      top: number
      right: number
      bottom: number
    }
    const within = (a: Box, b: Box): Box => ({
      left: Math.max(a.left, b.left),
      top: Math.max(a.top, b.top),
      right: Math.min(a.right, b.right),
      bottom: Math.min(a.bottom, b.bottom),
    })
    const isArea = ({ left, top, right, bottom }: Box): boolean => right - left > 0.5 && bottom - top > 0.5
    const wider = ({ left, top, right, bottom }: Box, by: number): Box => ({
      left: left - by,
      top: top - by,
      right: right + by,
      bottom: bottom + by,
    })
    /** The boxes of the letters of a text, without the room above and below them, as far as they are not clipped. */
    const letters = (text: Text, near: Box): Box[] => {
      const range = document.createRange()
      range.selectNodeContents(text)
      if (!isArea(within(range.getBoundingClientRect(), near))) return []
      const clips = [...ancestors(text)].filter((one) => getComputedStyle(one).overflow !== 'visible')
      return [...range.getClientRects()].flatMap((rect) => {
        const room = rect.height * 0.22
        const box = { left: rect.left, right: rect.right, top: rect.top + room, bottom: rect.bottom - room }
        const seen = clips.reduce((left: Box, one) => within(left, one.getBoundingClientRect()), box)
        return isArea(seen) ? [seen] : []
      })
    }
    const textsIn = (root: Node): Text[] => {
      if (root instanceof Text) return root.data.trim() === '' ? [] : [root]
      if (!(root instanceof Element) || /^(style|script|option)$/.test(root.localName)) return []
      if (!root.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return []
      const assigned = root instanceof HTMLSlotElement ? root.assignedNodes() : []
      return [...(root.shadowRoot?.childNodes ?? (assigned.length > 0 ? assigned : root.childNodes))].flatMap(textsIn)
    }
    const known = new Map<Element, Text[]>()
    /** The texts round a control. Those far from it are looked up once: the focus changes what is near it. */
    const textsRound = (control: Element, around: Element): Text[] => {
      const far = known.get(around) ?? textsIn(around)
      known.set(around, far)
      const host = control.getRootNode() instanceof ShadowRoot ? (control.getRootNode() as ShadowRoot).host : around
      return [...new Set([...far.filter((text) => text.isConnected), ...textsIn(host === around ? control : host)])]
    }
    // What is pressed by its label is there, but not seen.
    const isRinged = ({ outlineStyle, opacity }: CSSStyleDeclaration): boolean =>
      outlineStyle !== 'none' && opacity !== '0'
    const { controls } = globalThis as unknown as { controls: HTMLElement[] }
    return controls.flatMap((control) => {
      if (!control.isConnected || !control.checkVisibility()) return []
      control.focus({ preventScroll: true })
      const ringed = [control, ...ancestors(control)].find((one) => isRinged(getComputedStyle(one)))
      if (!ringed) return [`no ring: ${control.outerHTML.slice(0, 80)}`]
      const { outlineOffset, outlineWidth } = getComputedStyle(ringed)
      const offset = Number.parseFloat(outlineOffset)
      const own = ringed.getBoundingClientRect()
      const [outer, inner] = [wider(own, offset + Number.parseFloat(outlineWidth)), wider(own, offset)]
      const around = [...ancestors(ringed)].find((one) => one.getBoundingClientRect().height > own.height + 80)
      const over = textsRound(control, around ?? document.body).find((text) =>
        letters(text, outer).some((box) => {
          const seen = within(box, outer)
          if (!isArea(seen) || layer(text) !== layer(ringed)) return false
          const kept = within(seen, inner)
          return (
            !isArea(kept) ||
            (seen.right - seen.left) * (seen.bottom - seen.top) >
              (kept.right - kept.left) * (kept.bottom - kept.top) + 1
          )
        }),
      )
      return over
        ? [
            `${control.localName}.${control.className} “${(control.getAttribute('aria-label') ?? control.textContent ?? '').trim().slice(0, 30)}” over “${over.data.trim().slice(0, 30)}”`,
          ]
        : []
    })
  })
