/** How long a page rests before it fetches what is not in view yet: for print, and for scrolling without a wait. */
const REST = 3000

/** Waits until an element comes into view, or the page has rested a while and has nothing else to do. */
export function inView(element: Element): Promise<void> {
  return new Promise((wanted) => {
    const done = (): void => {
      observer.disconnect()
      clearTimeout(rested)
      wanted()
    }
    const observer = new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) done()
    })
    const rested = setTimeout(() => (globalThis.requestIdleCallback ?? setTimeout)(done), REST)
    observer.observe(element)
  })
}
