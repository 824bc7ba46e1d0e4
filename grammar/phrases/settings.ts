import { topic } from '../phrase-rule.ts';

/** How the tablet sounds, looks and names things, in every state of a job; none of it belongs to the job. */
export const settings = topic({
  'setting.louder': {
    risk: 'navigation',
    forms: ['speak louder to me', 'speak louder'],
    readBack: 'Louder.',
  },
  'setting.softer': {
    risk: 'navigation',
    forms: ['not so loud with your voice', 'speak softer'],
    readBack: 'Softer.',
  },
  'setting.slower': {
    risk: 'navigation',
    forms: ['speak more slowly to me', 'speak more slowly'],
    readBack: 'More slowly.',
  },
  'setting.faster': {
    risk: 'navigation',
    forms: ['talk to me a bit faster', 'talk a bit faster'],
    readBack: 'Faster.',
  },
  'setting.ownVoice': {
    risk: 'navigation',
    forms: ["use the tablet's own voice"],
    readBack: "The tablet's own voice.",
  },
  'setting.recordedVoice': {
    risk: 'navigation',
    forms: ['go back to the recorded voice'],
    readBack: 'The recorded voice.',
  },
  'setting.dark': { risk: 'navigation', forms: ['use the dark screen'], readBack: 'Dark screen.' },
  'setting.bright': { risk: 'navigation', forms: ['use the bright screen'], readBack: 'Bright screen.' },
  'setting.metric': {
    risk: 'navigation',
    forms: ['millimeters and newtons from now on', 'use metric units'],
    readBack: 'Millimetres, newtons and kilograms.',
  },
  'setting.customary': {
    risk: 'navigation',
    forms: ['inches and pounds from now on', 'use inches and pounds'],
    readBack: 'Inches and pounds.',
  },
  'setting.nearAndOff': {
    risk: 'navigation',
    forms: ['say near side and off side'],
    readBack: 'The near side is the left one, the off side is the right one, seen from behind.',
  },
  'setting.leftAndRight': {
    risk: 'navigation',
    forms: ['say left hand and right hand'],
    readBack: 'Left and right, seen from behind.',
  },
});
