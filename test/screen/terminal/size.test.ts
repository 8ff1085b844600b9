import { EventEmitter } from 'node:events';
import { describe, expect, test } from 'vitest';
import { settableSize, streamSize } from '../../../src/screen/terminal/size.tsx';

describe('the size of the terminal', () => {
  test('is 80 x 24 where the stream does not say, or says nought', () => {
    expect(streamSize(new EventEmitter()).get()).toEqual({ columns: 80, rows: 24 });
    expect(streamSize(Object.assign(new EventEmitter(), { columns: 0, rows: 0 })).get()).toEqual({
      columns: 80,
      rows: 24,
    });
  });

  test('follows the stream, and is the same object until it changes', () => {
    const stream = Object.assign(new EventEmitter(), { columns: 100, rows: 30 });
    const store = streamSize(stream);
    let told = 0;
    const stop = store.subscribe(() => {
      told += 1;
    });
    expect(store.get()).toBe(store.get());
    stream.columns = 90;
    stream.emit('resize');
    expect(store.get()).toEqual({ columns: 90, rows: 30 });
    stop();
    stream.emit('resize');
    expect(told).toBe(1);
  });

  test('can be set by hand', () => {
    const store = settableSize(80, 24);
    let told = 0;
    store.subscribe(() => {
      told += 1;
    });
    store.set(44, 13);
    expect([store.get(), told]).toEqual([{ columns: 44, rows: 13 }, 1]);
  });
});
