import type { LineItem } from '../keys.ts';
import type { OpenField } from './open-field.ts';

/** The keys of an open number field as they act now: an empty one may take its default, go back or go the other way. */
export const fieldKeys = (open: OpenField): readonly LineItem[] => {
  const { field, spec } = open;
  const isEmpty = field.text === '';
  const takesDefault = spec.emptyTakes !== undefined && isEmpty;
  return [
    takesDefault ? { act: 'keep', words: 'take it' } : { act: 'keep' },
    ...(spec.sign !== undefined && spec.sign !== 'plain' ? [{ act: 'flip' as const }] : []),
    ...(spec.otherWay === undefined || takesDefault
      ? []
      : [{ act: 'other-way' as const, words: spec.otherWay }]),
    ...(open.before === undefined || open.escape !== undefined ? [] : [{ act: 'reopen' as const }]),
    { act: 'close' as const, words: isEmpty ? (open.escape?.words ?? 'close') : 'close' },
    { act: 'why' as const, words: open.whyWords ?? 'why' },
    { act: 'leave' as const },
  ];
};
