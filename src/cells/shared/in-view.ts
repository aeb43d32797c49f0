/** Milliseconds until parts out of view are loaded as well, for printing and for scrolling without delay. */
const REST = 3000

/** Resolves when an element comes into view, or when the page has been open for a while, idle or not. */
export function inView(element: Element): Promise<void> {
  return new Promise((resolve) => {
    const done = (): void => {
      observer.disconnect()
      clearTimeout(rested)
      resolve()
    }
    const observer = new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) done()
    })
    const rested = setTimeout(done, REST)
    observer.observe(element)
  })
}
