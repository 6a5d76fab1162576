"""What a thumb would miss: WCAG 2.2, 2.5.5, links within running text excepted."""

SMALL_TARGETS = """
    () => [...document.querySelectorAll("a[href], button, input, select, summary, textarea")]
      .filter(element => element.checkVisibility() && !element.matches(".skip"))
      .filter(element => !(element.matches("a") && element.closest("p, li, td, dd")
        && element.closest("p, li, td, dd").textContent.trim() !== element.textContent.trim()
        && getComputedStyle(element).display === "inline"))
      .map(element => [element, (element.closest("label") ?? element).getBoundingClientRect()])
      .filter(([element, box]) => box.height < 43.9 || box.width < 43.9)
      .map(([element, box]) => `${box.width} x ${box.height} ${element.outerHTML.slice(0, 100)}`)
"""
