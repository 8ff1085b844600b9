import { decide } from '../../coach/decide/decide.ts';
import type { Refusal } from '../../coach/decide/refusal.ts';
import type { Intent } from '../../coach/intents.ts';
import type { Acted, Keeper } from '../../coach/keeper.ts';
import { refusalText } from '../../coach/refusal-text.ts';
import { openShopKeeper, type ShopKeeper } from '../../coach/shop-keeper.ts';
import type { View } from '../../coach/view.ts';
import type { Step } from '../../coach/walk.ts';
import { row } from '../../drawing/cells.ts';
import type { Look, Row } from '../../drawing/row.ts';
import type { Quantity, System } from '../../quantity/quantities.ts';
import { usualLabel } from '../../quantity/usual.ts';
import type { Stage } from '../../stages/sheet.ts';
import type { Voice } from '../../words/say.ts';
import type { Content } from '../../words/schema.ts';
import { press } from '../fields/number-field.ts';
import { typeInto } from '../fields/typed-line.ts';
import type { Act } from '../key-table.ts';
import {
  actFor,
  bottomLine,
  type KeyContext,
  keyId,
  type LineItem,
  notHere,
  type PageKey,
  writes,
} from '../keys.ts';
import type { DiskState, PageContext } from '../pages/context.ts';
import { keptText } from '../pages/kept-text.ts';
import type { Lit } from '../pages/stage-page.ts';
import { type Glove, NO_GLOVE, pressed } from '../terminal/glove.ts';
import type { Key } from '../terminal/split-keys.ts';
import { fieldKeys } from './field-keys.ts';
import { OnDisk } from './on-disk.ts';
import type { OpenField, OpenText } from './open-field.ts';

/** What the desk asks of the program around it. */
export type Around = Readonly<{
  content: Content;
  now: () => Date;
  /** Steady time for the glove guard, ms. */
  steady_ms: () => number;
  /** Whether a writing key that comes again at once counts once. */
  glove: boolean;
  quit: (code: number) => void;
  suspend: () => void;
  /** Something changed that no key did. */
  redraw: () => void;
  openBuild: (path: string, demo: boolean) => Keeper | string;
  newBuild: (name: string, system: System) => Keeper | string;
  ways: Ways;
  /** Asks the worker for what the pages ask. */
  think: (keeper: Keeper) => void;
  units: () => System;
  setUnits: (system: System) => void;
  leftBuild: (keeper: Keeper) => void;
  /** A page threw: a fault of the program. */
  failed: (error: unknown) => void;
}>;

/**
 * One place of the bench: how it looks, and what its keys do. Places stand on a stack; Esc takes the top one off.
 * A place keeps its own state; the desk redraws after every key.
 */
export type Place = {
  /** The stage it belongs to, for the strip. */
  stage?: () => Stage;
  rows: (desk: Desk) => Row[];
  /** What the key asks for on this page. True when something was done (or answered). */
  act: (desk: Desk, act: Act | string, char: string) => boolean;
  /** Letters of its own, at most two. */
  own?: readonly PageKey[];
  /** Keys for the bottom row. */
  keys: (desk: Desk) => readonly LineItem[];
  field?: OpenField | null;
  /** How many moves Page Down and Page Up are here, where a move is more than a row. */
  pageStep?: number;
};

/** Ways from one page to another; given to the desk, so that pages need not know each other. */
export type Ways = Readonly<{
  stage: (desk: Desk, lit: Lit) => Place;
  findings: (stage: Stage) => Place;
  finding: (key: string) => Place;
  journal: (stage: Stage) => Place;
  why: (lit: Lit) => Place;
  drawing: (lit: Lit) => Place;
  large: (lit: Lit) => Place;
  order: (lit: Lit) => Place;
  hurt: (lit: Lit) => Place;
  help: (stage: Stage, keys: readonly LineItem[], own: readonly PageKey[]) => Place;
  glossary: (stage: Stage) => Place;
  caution: (stage: Stage, caution: string, then: () => void) => Place;
  survey: (desk: Desk, step: Step) => Place;
  design: () => Place;
  /** The opening page, made anew. */
  opening: () => Place;
  held: (keeper: Keeper) => Place;
}>;

/** Rows that Page Down and Page Up move a list by. */
const PAGE_STEP = 8;

/**
 * The bench as it is used: the build that is open, the stack of places, the open field, what row 22 says.
 * Everything a key does goes through here, synchronously, outside of React: two keys in one chunk see each other's work.
 */
export class Desk {
  keeper: Keeper | null = null;
  look: Look = { columns: 80, rows: 24, ascii: false };
  message: string | null = null;
  text: OpenText | null = null;
  /** The units shown; a build's own at first. */
  system: System;
  private places: Place[] = [];
  private glove: Glove = NO_GLOVE;
  private shopAt: Readonly<{ path: string; keeper: ShopKeeper }> | null = null;
  private readonly onDisk = new OnDisk();
  readonly around: Around;

  constructor(around: Around) {
    this.around = around;
    this.system = around.units();
  }

  /** The page that is shown; the opening page, made only when no other was put there. */
  get place(): Place {
    if (this.places.length === 0) this.places = [this.around.ways.opening()];
    return this.places.at(-1) as Place;
  }

  get view(): View {
    if (this.keeper === null) throw new Error('no build is open');
    return this.keeper.view();
  }

  get voice(): Voice {
    return { content: this.around.content, system: this.system };
  }

  disk(): DiskState {
    return this.onDisk.state(this.keeper);
  }

  context(): PageContext {
    const { view, voice, look, message } = this;
    return { view, voice, look, disk: this.disk(), shop: this.shop().shop(), message };
  }

  /** The shop beside the open build, looked into once. */
  shop(): ShopKeeper {
    const path = this.keeper?.path ?? '';
    if (this.shopAt?.path !== path) this.shopAt = { path, keeper: openShopKeeper(path, this.around.now) };
    return this.shopAt.keeper;
  }

  /** The keys of a place as they act now: those of its line of text, of its open field, or its own. */
  keysOf(place: Place): readonly LineItem[] {
    const field = place.field;
    if (this.text !== null) return [{ act: 'keep', words: 'keep' }, { act: 'close' }];
    return field?.field.open === true ? fieldKeys(field) : place.keys(this);
  }

  /** Row 23 of a place. */
  keyRow(place: Place): Row {
    const inField = this.text !== null || place.field?.field.open === true;
    return bottomLine(
      this.keysOf(place),
      this.look.columns,
      this.look.ascii,
      inField ? [] : (place.own ?? []),
    );
  }

  rows(): Row[] {
    return this.place.rows(this);
  }

  push(place: Place): void {
    this.places.push(place);
  }

  pop(): boolean {
    if (this.places.length <= 1) return false;
    this.places.pop();
    return true;
  }

  /** Takes every page off down to one and puts this in its place. */
  root(place: Place): void {
    this.places = [place];
  }

  replace(place: Place): void {
    this.places[this.places.length - 1] = place;
  }

  say(message: string | null): void {
    this.message = message;
  }

  /** Carries out an intent; row 22 says what was done, or why not. True when it was kept. */
  act(intent: Intent): boolean {
    const keeper = this.keeper;
    if (keeper === null) return false;
    const acted: Acted = keeper.act(intent);
    switch (acted.is) {
      case 'refused':
        this.sayRefused(acted.refusal);
        return false;
      case 'barred':
        this.say(`Not kept: ${acted.why}.`);
        return false;
      case 'kept': {
        this.onDisk.kept(acted.unwritten?.message ?? null);
        this.say(keptText(this.context(), intent, acted.entry));
        this.around.think(keeper);
        return true;
      }
    }
  }

  private sayRefused(refusal: Refusal): void {
    const text = refusalText(this.voice, this.view, refusal);
    this.say(text.accepted === '' ? text.says : `${text.says} ${text.accepted}`);
  }

  /** Whether this would be refused as things stand; row 22 says why, before anybody has typed for nothing. */
  refuses(intent: Intent): boolean {
    const tried = decide(this.view, intent);
    if (!tried.ok) this.sayRefused(tried.refusal);
    return !tried.ok;
  }

  /** What was typed, with its unit where the units shown are not the build's. */
  typedFor(typed: string, quantity: Quantity): string {
    const label = usualLabel(quantity, this.system);
    const bare = /^[+\-−]?[\d.,/ ½⅓⅔¼¾⅛⅜⅝⅞]+$/.test(typed.trim());
    return this.system === this.view.build.system || !bare || label === '' ? typed : `${typed} ${label}`;
  }

  open(keeper: Keeper): void {
    this.keeper = keeper;
    this.system = keeper.view().build.system;
    this.around.think(keeper);
  }

  /** Leaves the build that is open; its last entry says so. */
  leaveBuild(): void {
    const keeper = this.keeper;
    if (keeper === null) return;
    if (keeper.open.barred() === null) {
      const next = keeper.view().next;
      keeper.act({ do: 'stop', ...(next === null ? {} : { step: next.key }) });
    }
    this.around.leftBuild(keeper);
    keeper.open.release();
    this.keeper = null;
  }

  quit(code = 0): void {
    const unsaid = this.onDisk.beforeLeaving();
    if (unsaid !== null) return this.say(unsaid);
    this.leaveBuild();
    this.around.quit(code);
  }

  private context_of_keys(): KeyContext {
    const field = this.place.field;
    const own = this.place.own;
    return { in: field?.field.open === true ? 'number' : 'page', ...(own === undefined ? {} : { own }) };
  }

  /** Every key of a chunk, in order. */
  keys(keys: readonly Key[]): void {
    for (const key of keys) {
      if (this.text !== null) this.textKey(this.text, key);
      else this.key(key);
    }
  }

  private textKey(text: OpenText, key: Key): void {
    const line = typeInto(text.line, key);
    if (line !== null) this.text = { ...text, line };
    else if (key.name === 'ctrl-z') this.around.suspend();
    else {
      this.text = null;
      if (key.name === 'enter') text.submit(text.line.text);
      else text.close?.();
    }
  }

  private key(key: Key): void {
    const where = this.context_of_keys();
    if (this.around.glove && writes(key, where) && key.pasted !== true) {
      const guarded = pressed(this.glove, keyId(key), this.around.steady_ms());
      this.glove = guarded.glove;
      if (!guarded.counts) {
        this.say('Counted once: the same key came again at once.');
        return;
      }
    }
    const field = this.place.field;
    if (field?.field.open === true) this.fieldKey(field, key);
    else this.pageKey(key, where);
  }

  private fieldKey(open: OpenField, key: Key): void {
    const place = this.place;
    if (key.name === 'ctrl-z') return this.around.suspend();
    if (key.name === 'up' && open.field.text === '' && open.before !== undefined) return open.before();
    const { field, done } = press(open.field, key, open.spec);
    place.field = { ...open, field };
    this.say(field.said);
    switch (done.is) {
      case 'typing':
        return;
      case 'keep':
        place.field = null;
        return open.keep(done.value, done.typed, done.replaces);
      case 'keep-several':
        place.field = null;
        return open.several?.(done.values, done.typed);
      case 'other-way':
        place.field = null;
        return open.otherWay?.();
      case 'act':
        // Nothing typed is lost: the field lies open under the page that comes up.
        if (done.act === 'leave') return this.quit();
        if (!place.act(this, done.act, key.char ?? '')) this.say(notHere(key, { in: 'page' }));
        return;
      case 'close':
        if (open.escape !== undefined && open.field.text === '') return open.escape.go();
        return open.close?.();
    }
  }

  private pageKey(key: Key, where: KeyContext): void {
    const place = this.place;
    if (key.name === 'page-down' || key.name === 'page-up') {
      for (let i = 0; i < (place.pageStep ?? PAGE_STEP); i++)
        place.act(this, key.name === 'page-down' ? 'next' : 'previous', '');
      return;
    }
    const act = actFor<string>(key, where);
    if (act === null) return this.say(notHere(key, where));
    if (act === 'suspend') return this.around.suspend();
    if (act === 'interrupt') return this.quit(130);
    if (act === 'open' && this.onDisk.lacks) return this.say(this.onDisk.tryAgain(this.keeper));
    // A field that Esc closed over half a number opens with it: the hand goes on where it was.
    const closed = place.field;
    if (act === 'open' && closed != null && !closed.field.open && closed.field.text !== '') {
      place.field = { ...closed, field: { ...closed.field, open: true, said: null } };
      return this.say(null);
    }
    this.say(null);
    if (place.act(this, act, key.char ?? '')) return;
    if (act === 'leave') return this.quit();
    if (act === 'back') {
      if (!this.pop()) this.say('Esc: nothing before this page. q leaves');
      return;
    }
    this.say(notHere(key, where));
  }

  /** Opens a line for free text. */
  ask(text: OpenText): void {
    this.text = text;
  }

  /** A page could not be drawn: the first page of the build is tried, and the fault goes to the program around. */
  failed(error: unknown): void {
    this.around.failed(error);
  }

  /** A row that the page keeps for the line of free text. */
  textRow(): Row | null {
    return this.text === null ? null : row(' ', ['lead', this.text.title], '  ');
  }
}
