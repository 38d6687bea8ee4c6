import { effect, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { BitePanel } from './asked/bite-panel.js';
import { LayPanel } from './asked/lay-panel.js';
import { OutlineCard } from './begin/outline-card.js';
import { Start } from './begin/start.js';
import { Board } from './board/board.js';
import { openFile, openLink, openPasted } from './files/open.js';
import { JobForm } from './form/job-form.js';
import { CenterPanel } from './panels/center-panel.js';
import { FaultList, RefusalNote, StuckNote } from './panels/faults.js';
import { Figures } from './panels/figures.js';
import { Findings } from './panels/findings.js';
import { Head } from './panels/head.js';
import { Jumps } from './panels/jumps.js';
import { MeasurePanel } from './panels/measure-panel.js';
import { News } from './panels/news.js';
import { RangePanel } from './panels/range-panel.js';
import { SheetView } from './panels/sheet-view.js';
import { StepWalk } from './panels/step-walk.js';
import { Takeaways } from './panels/takeaways.js';
import { Ways } from './panels/ways.js';
import { aim } from './state/aim.js';
import { drawNow } from './state/frames.js';
import { isKept } from './state/keep.js';
import { isMarked } from './state/marked.js';
import { catchUp, isCaughtUp } from './state/panels.js';
import { followKeys } from './state/pressed.js';
import { canUndo, dragging, fresh, isOpen, issues, shown } from './state/store.js';
import { redo, undo } from './state/written.js';

/** The whole page. */
export function App() {
  useEffect(listen, []);
  const open = isOpen.value;
  const screen = aim.value !== null ? 'ways' : open ? 'bench' : 'start';
  const before = useRef(screen);
  // What was pressed is gone with the screen that it stood on: the keys go on at the head of the next one.
  useEffect(() => {
    if (before.current === screen) return;
    before.current = screen;
    if (document.activeElement === document.body)
      document.querySelector<HTMLElement>('main')?.focus({ preventScroll: true });
  }, [screen]);
  return (
    <div class="screen">
      <Head />
      <StuckNote />
      <RefusalNote />
      <OutlineCard />
      {screen === 'ways' ? <Ways /> : screen === 'bench' ? <Bench /> : <Start />}
      <Foot />
    </div>
  );
}

// In the order of reading: what to watch, the drawing with the numbers to change under it, and what to do at the machine.
function Bench() {
  return (
    <main tabIndex={-1} class={`bench${dragging.value ? ' moving' : ''}`}>
      <div class="watch">
        <FaultList />
        <Findings />
        <Later tasks={1}>{() => <Figures />}</Later>
      </div>
      <div class="middle">
        <Board />
        <Jumps />
        <State />
        <CenterPanel />
        <Work />
      </div>
      <div class="doing">
        <Later tasks={1}>
          {() => (
            <>
              <LayPanel />
              <StepWalk />
            </>
          )}
        </Later>
        <Later tasks={2}>{() => <Takeaways />}</Later>
      </div>
      <SheetView />
      <News />
    </main>
  );
}

function Work() {
  return (
    <div class="work">
      <Later tasks={1}>
        {() => (
          <>
            <BitePanel />
            <RangePanel />
            <MeasurePanel />
          </>
        )}
      </Later>
      <Later tasks={2}>{() => <JobForm />}</Later>
    </div>
  );
}

// After the drawing, in tasks of their own: the fields of a large job take as long as the drawing does.
function Later({ tasks, children }: { tasks: number; children: () => ComponentChildren }) {
  const done = useSignal(0);
  useEffect(() => {
    if (done.value === tasks) return;
    const timer = setTimeout(() => {
      done.value++;
    });
    return () => clearTimeout(timer);
  }, [done.value]);
  return done.value < tasks ? null : children();
}

/** Whether what is drawn is the job as it stands. */
function State() {
  const line = useRef<HTMLParagraphElement>(null);
  const isCurrent = isCaughtUp.value;
  // It ceases to be so with the change itself, and is so again with the frame that draws it.
  useEffect(
    () =>
      effect(() => {
        if (!isCaughtUp.value && line.current !== null) line.current.dataset.fresh = 'false';
      }),
    [],
  );
  useLayoutEffect(() => {
    if (line.current !== null) line.current.dataset.fresh = String(isCurrent);
  });
  const words =
    issues.value.length > 0 && fresh.value
      ? 'from before the fault'
      : isMarked.value
        ? 'being worked out'
        : 'as the job stands';
  return (
    <p class={`state${isMarked.value ? ' old' : ''}`} ref={line} aria-live="off">
      {shown.value === null && issues.value.length > 0
        ? 'Nothing to draw before the faults are mended'
        : `Drawing ${words}`}
    </p>
  );
}

function Foot() {
  return (
    <footer class="foot">
      <p>
        Geometry only: it knows neither your machine nor your clamping. Makers’ instructions, local rules and
        qualified people come first. Runs on this machine alone and sends nothing anywhere.
      </p>
    </footer>
  );
}

function listen(): () => void {
  const keyed = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) undo();
    else if (key === 'y' || (key === 'z' && event.shiftKey)) redo();
    else return;
    event.preventDefault();
  };
  const over = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files') !== true) return;
    event.preventDefault();
    document.documentElement.classList.add('dropping');
  };
  const left = (event: DragEvent): void => {
    if (event.relatedTarget === null) document.documentElement.classList.remove('dropping');
  };
  const dropped = (event: DragEvent): void => {
    const [file] = event.dataTransfer?.files ?? [];
    document.documentElement.classList.remove('dropping');
    if (file === undefined) return;
    event.preventDefault();
    void openFile(file);
  };
  // In a field it is for the field.
  const pasted = (event: ClipboardEvent): void => {
    const [file] = event.clipboardData?.files ?? [];
    if (event.target instanceof Element && event.target.matches('input, textarea, select')) return;
    event.preventDefault();
    void (file === undefined ? openPasted(event.clipboardData?.getData('text/plain') ?? '') : openFile(file));
  };
  const leaving = (event: BeforeUnloadEvent): void => {
    if (canUndo.value && !isKept.value) event.preventDefault();
  };
  // What is done next may be done to what the panels show.
  const used = (event: Event): void => {
    const onBoard = event.target instanceof Element && event.target.closest('#board') !== null;
    if (!onBoard) catchUp();
    // Moves by keys are drawn with their frames.
    if (!onBoard || event.type !== 'keydown') drawNow();
  };
  const linked = (): void => void openLink();
  const stop = new AbortController();
  const { signal } = stop;
  followKeys(window, signal);
  for (const kind of ['keydown', 'pointerdown', 'pointerup'])
    window.addEventListener(kind, used, { signal, capture: true });
  window.addEventListener('keydown', keyed, { signal });
  window.addEventListener('dragover', over, { signal });
  window.addEventListener('dragleave', left, { signal });
  window.addEventListener('drop', dropped, { signal });
  window.addEventListener('paste', pasted, { signal });
  window.addEventListener('beforeunload', leaving, { signal });
  window.addEventListener('hashchange', linked, { signal });
  return () => stop.abort();
}
