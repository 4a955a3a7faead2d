// settings.svelte.ts: what this device remembers: units, theme, who is at the bench, its own name.
import type { Units } from '../api/shapes';

export const themes = ['auto', 'light', 'dark', 'sun'] as const;
export type Theme = (typeof themes)[number];

const kKey = 'flatwise';

interface Kept {
  units?: Units | undefined;
  theme?: Theme | undefined;
  person?: string | undefined;
  device?: string | undefined;
}

function read(): Kept {
  try {
    return JSON.parse(localStorage.getItem(kKey) ?? '{}') as Kept;
  } catch {
    return {};
  }
}

class Settings {
  private kept = $state<Kept>(read());

  get units(): Units | undefined {
    return this.kept.units;
  }
  get theme(): Theme {
    return this.kept.theme ?? 'auto';
  }
  get person(): string | undefined {
    return this.kept.person;
  }
  /** A name of this device that nobody else has: made once. */
  get device(): string {
    return this.kept.device ?? this.set({ device: `page-${crypto.getRandomValues(new Uint32Array(1))[0]!.toString(36)}` }).device!;
  }
  set(change: Kept): Kept {
    this.kept = { ...this.kept, ...change };
    try {
      localStorage.setItem(kKey, JSON.stringify(this.kept));
    } catch {
      // Without a place to remember, it holds until the page is closed.
    }
    this.dress();
    return this.kept;
  }
  dress(): void {
    if (this.theme === 'auto') delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = this.theme;
  }
}

export const settings = new Settings();
