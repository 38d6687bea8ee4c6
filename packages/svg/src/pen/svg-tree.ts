import { adopt, type Svg, withWindow } from '@svgdotjs/svg.js';
import { NAMESPACE, type SvgNode } from './node.js';

/** A drawing as a tree of svg.js in a window, which is not in the page yet. */
export function svgTreeOf(root: SvgNode, window: Window): Svg {
  return withWindow(window, () => {
    const svg = adopt(elementOf(root, window.document)) as Svg;
    // Namespaces belong to the elements; as plain attributes they would be written a second time.
    for (const name of ['xmlns', 'xmlns:xlink', 'version']) svg.node.removeAttribute(name);
    return svg;
  });
}

/** An element of the DOM with what a node has, each known to svg.js by its kind. */
function elementOf({ name, attributes, children }: SvgNode, document: Document): Element {
  const element = document.createElementNS(NAMESPACE, name);
  for (const [key, value] of attributes) element.setAttribute(key, value);
  for (const child of children) {
    element.appendChild(
      typeof child === 'string' ? document.createTextNode(child) : elementOf(child, document),
    );
  }
  adopt(element);
  return element;
}
