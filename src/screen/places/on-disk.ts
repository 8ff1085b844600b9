import type { Keeper } from '../../coach/keeper.ts';
import type { DiskState } from '../pages/context.ts';

/** Whether what was kept is on disk, and whether who leaves without it was told. */
export class OnDisk {
  private unwritten: string | null = null;
  private warned = false;

  /** An entry was kept: why it is not on disk, null where it is. */
  kept(unwritten: string | null): void {
    this.unwritten = unwritten;
  }

  get lacks(): boolean {
    return this.unwritten !== null;
  }

  state(keeper: Keeper | null): DiskState {
    if (keeper === null) return { is: 'on disk', at: null };
    if (this.unwritten !== null) return { is: 'not on disk', why: this.unwritten };
    const barred = keeper.open.barred();
    if (barred !== null) return { is: 'read only', why: barred };
    return { is: 'on disk', at: keeper.view().build.live.at(-1)?.at ?? null };
  }

  /** What is said before leaving, once; null where nothing would be lost, or it was said. */
  beforeLeaving(): string | null {
    if (this.unwritten === null || this.warned) return null;
    this.warned = true;
    return 'The last entries are not on disk. q again leaves without them; Enter tries again.';
  }

  /** Tries to write once more, and says what came of it. */
  tryAgain(keeper: Keeper | null): string {
    const tried = keeper?.open.journal.retry();
    if (tried?.ok !== true) return `Still not on disk: ${tried?.fault.message ?? 'no build is open'}.`;
    this.unwritten = null;
    this.warned = false;
    return 'On disk now.';
  }
}
