/** The text of an SVG file as an element of this page. Nothing in it is run: the page's policy sees to that. */
export function elementOf(svg: string): Element {
  return document.importNode(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement, true);
}

/** An element that is drawn; where that fails, which is a fault of ours, a line that says so, and the page goes on. */
export function drawnOrSaid(draw: () => string | Element): Element {
  try {
    const drawn = draw();
    return typeof drawn === 'string' ? elementOf(drawn) : drawn;
  } catch (error) {
    const line = document.createElement('p');
    line.className = 'fault';
    line.textContent = `This could not be drawn, which is a fault in edgebite: ${error instanceof Error ? error.message : error}`;
    return line;
  }
}
