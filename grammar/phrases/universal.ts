import { topic } from '../phrase-rule.ts';

/** Understood in every state. Each short word has a longer twin first: the twin is what prompts teach. */
export const universal = topic({
  stop: {
    risk: 'void',
    forms: ['stop everything now', 'stop everything', 'stop stop stop', 'stop stop', 'stop'],
    readBack: 'Stopped.',
  },
  yes: { risk: 'navigation', forms: ["that's right", 'yes it is', 'yes', 'affirmative'], readBack: 'Yes.' },
  no: { risk: 'navigation', forms: ["no it's not", "no it isn't", 'no', 'negative'], readBack: 'No.' },
  notSure: {
    risk: 'answer',
    forms: ["i'm not sure about that", "i'm not sure", 'not sure', "i don't know", 'hard to say'],
    readBack: 'Not sure.',
  },
  cannotSee: {
    risk: 'answer',
    forms: ["i can't see it from here", "i can't see it", "can't see it"],
    readBack: 'You cannot see it.',
  },
  skip: {
    risk: 'answer',
    forms: ['skip this question', 'skip this one', 'skip it', 'skip'],
    readBack: 'Skipped.',
  },
  goBack: {
    risk: 'navigation',
    forms: ['go back one question', 'go back one', 'go back'],
    readBack: 'Going back.',
  },
  sayAgain: {
    risk: 'navigation',
    forms: ['say that again', 'say again', 'repeat that', 'what was that'],
    readBack: '',
  },
  why: { risk: 'navigation', forms: ['why are you asking that', 'why that one', 'why'], readBack: '' },
  showMe: {
    risk: 'navigation',
    forms: ['show me where that is', 'where do i look', 'show me where', 'show me'],
    readBack: '',
  },
  howFar: { risk: 'navigation', forms: ['how far along are we', 'how far are we', 'how far'], readBack: '' },
  help: {
    risk: 'navigation',
    forms: ['what can i say here', 'what can i say', 'help me', 'help'],
    readBack: '',
  },
  carryOn: {
    risk: 'navigation',
    forms: ["i'm ready to carry on", 'carry on', 'keep going', "let's go on"],
    readBack: 'Carrying on.',
  },
  thatIsDone: {
    risk: 'answer',
    forms: ['that job is done', 'that is done', "that's done", 'all done', 'done'],
    readBack: 'Done.',
  },
  handOver: {
    risk: 'answer',
    forms: ['hand this over to the dealer', 'hand it over', 'call the dealer', 'i need somebody else'],
    readBack: 'Handing over.',
  },
});
