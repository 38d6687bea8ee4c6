import type { JSX } from 'preact';
import { Component, type ComponentType } from 'preact';

/**
 * The same component, drawn anew only if one of its props is another; handlers do not count, since they do the same
 * for the same place.
 */
export function kept<P extends object>(inner: (props: P) => JSX.Element | null): ComponentType<P> {
  return class extends Component<P> {
    override shouldComponentUpdate(next: Readonly<P>): boolean {
      const before = this.props as Readonly<P>;
      // All rows of a list are asked this each time that one of them changes: nothing is made for it.
      for (const key in next) if (next[key] !== before[key] && typeof next[key] !== 'function') return true;
      return false;
    }

    override render() {
      return inner(this.props as P);
    }
  };
}
