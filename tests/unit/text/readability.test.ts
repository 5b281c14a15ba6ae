import { describe, expect, it } from 'vitest';
import { content, guides, guideText, languages } from '../../../src/content/load.ts';
import { spokenGrade } from '../../../src/content/proofs.ts';
import { SOURCE, ownerTexts } from '../../../src/content/texts.ts';
import { sentencesIn } from '../../../src/text/glossary.ts';
import { count, grade, gradeOf, hardest, sentencesOf } from '../../../src/text/readability.ts';

describe('readability', () => {
  it('counts words, sentences and syllables as a reader would', () => {
    // By hand: The-cat-sat (3), It-was-warm (3).
    expect(count(['The cat sat. It was warm.'])).toEqual({
      words: 6,
      sentences: 2,
      syllables: 6,
    });
    // The-shut-o-ven-is-hot (6), do-not-o-pen-it (5).
    expect(count(['The shut oven is hot.', 'Do not open it'])).toEqual({
      words: 9,
      sentences: 2,
      syllables: 11,
    });
  });

  it('ends a sentence with its passage, with or without a full stop', () => {
    expect(sentencesOf(['Wait', 'Then look! Is it hot?', '', ' … '])).toEqual([
      'Wait',
      'Then look!',
      'Is it hot?',
    ]);
  });

  it('does not end a sentence inside a number', () => {
    expect(sentencesOf(['It takes 1.5 hours to cool.'])).toHaveLength(1);
  });

  it('keeps a contraction one word', () => {
    expect(count(["Don't pull, don’t push."])).toMatchObject({ words: 4, sentences: 1 });
  });

  it('reads figures out digit by digit', () => {
    expect(count(['Call 911.'])).toEqual({ words: 2, sentences: 1, syllables: 4 });
  });

  it('grades passages together, by the formula', () => {
    const { words, sentences, syllables } = count(['The shut oven is hot.', 'Do not open it']);
    expect(gradeOf(['The shut oven is hot.', 'Do not open it'])).toBe(
      grade(words, sentences, syllables),
    );
    expect(gradeOf([])).toBe(-Infinity);
  });

  it('puts hard writing above grade 6 and plain writing below', () => {
    expect(
      gradeOf([
        'Discontinue operation of the appliance immediately and contact an authorized representative.',
      ]),
    ).toBeGreaterThan(12);
    expect(gradeOf(['Turn the oven off. Call us at once. Stay out of the room.'])).toBeLessThan(3);
  });

  it('lists the hardest sentences first, each once, and none of a word or two', () => {
    const listed = hardest(
      [
        'Electricity.',
        'Turn all of it off. Authorized technicians investigate electricity.',
        'Turn all of it off.',
        'Then wait for the oven to cool.',
      ],
      2,
    );
    expect(listed.map(({ sentence }) => sentence)).toEqual([
      'Authorized technicians investigate electricity.',
      'Then wait for the oven to cool.',
    ]);
    expect(listed[0]?.grade).toBeGreaterThan(listed[1]?.grade ?? NaN);
  });
});

describe('a page for readers that is in no guide', () => {
  it.each(ownerTexts)('%s reads at grade 9 or lower in English (WCAG 3.1.5)', (name) => {
    const text = content().text(`text/${SOURCE}/${name}.json`);
    if (!text.ok) throw new Error(name);
    const { topics = { all: text.value.value } } = text.value.value as { topics?: object };
    for (const part of Object.values(topics) as unknown[])
      expect(spokenGrade(sentencesIn(part).map(([, sentence]) => sentence))).toBeLessThanOrEqual(9);
  });
});

/**
 * Verbs of what hands do, at the beginning of a sentence, after what may stand before them; and lines
 * that tell of one deed or the other, or of wiping until all is clean. Marks of letters are taken
 * off; plain-language practice, no source.
 */
const DEEDS: Readonly<Record<string, readonly [before: string, verbs: string, one: RegExp]>> = {
  en: [
    'then |first |next time,? |when [^,]*, |once [^,]*, |with [^,]*, |tomorrow, ',
    'bake|call|center|change|clear|close|copy|cover|fill|get|heat|hold|lift|lower|move|open|press|pull|push|put|raise|remove|rinse|set|shut|slide|spray|start|take|throw|turn|unplug|wipe|write',
    /^If |\?|Wipe again/,
  ],
  es: [
    'luego |despues |primero |la proxima vez,? |cuando [^,]*, |con [^,]*, |manana, ',
    '(?:abra|acomode|apague|baje|caliente|cambie|centre|cierre|copie|cubra|desconecte|empiece|empuje|encienda|enjuague|hornee|inicie|jale|lave|levante|limpie|llame|mantenga|mueva|ponga|prenda|presione|quite|retire|rocie|saque|seque|suba|tape|tire|tome)(?:l[oae]s?)?',
    /^Si |¿|Repita/,
  ],
  fr: [
    'puis |ensuite, |d.abord, |la prochaine fois, |quand [^,]*, |une fois [^,]*, |demain, ',
    'appelez|appuyez|baissez|centrez|changez|coupez|couvrez|copiez|debranchez|demarrez|enlevez|essuyez|eteignez|faites sortir|fermez|glissez|jetez|lancez|maintenez|mettez|montez|notez|ouvrez|poussez|pressez|prenez(?! rendez|-en)|reglez|relancez|remettez|remplacez|reposez|retirez|rincez|sechez|sortez|soulevez|tirez|tournez|vaporisez|versez',
    /^S(?:i|’il) |\?|Recommencez/,
  ],
  ar: [
    'ثم |اولا |عندما [^،]*، |غدا ',
    'اتصل|اخرج|اخلع|اخفض|ادر|ادفع|ارفع|ارم|اسحب|اشطف|اضبط|اضغط|اطفئ|اعد|اغسل|اغلق|افتح|افصل|اكتب|التقط|امسح|انزع|انقل|جفف|سخن|شغل|صب|ضع|غط|غير|نظف',
    /^إذا |؟|امسح مرة أخرى/,
  ],
};
function deedsIn(language: string, line: string): number {
  const [before = '', verbs = '', one = /^/] = DEEDS[language] ?? [];
  const deed = new RegExp(`^(?:${before})*(?:${verbs})(?![\\p{L}])`, 'iu');
  const plain = (text: string) => text.normalize('NFD').replaceAll(/\p{M}/gu, '');
  return one.test(line) ? 1 : sentencesOf([line]).filter((said) => deed.test(plain(said))).length;
}

describe('a numbered line', () => {
  it.each(languages())('asks for one deed: %s', (language) => {
    const lines = guides().flatMap((guide) =>
      Object.values(guideText(language, guide)).flatMap(({ now = [], lines: all = [] }) => [
        ...now,
        ...all,
      ]),
    );
    const told = [...new Set(lines)].map((line) => [deedsIn(language, line), line] as const);
    // That some are seen shows that the language's verbs are known.
    expect(told.filter(([deeds]) => deeds === 1).length).toBeGreaterThan(100);
    expect(told.filter(([deeds]) => deeds > 1)).toEqual([]);
  });

  it.each([
    ['en', 'Press Off. Turn the knobs to Off.', 2],
    ['en', 'Push the door shut. Then pull the handle gently.', 2],
    ['en', 'Turn that breaker off. Leave it off.', 1],
    ['en', 'Call us. Say what you saw.', 1],
    ['es', 'Ponga las perillas en Off. Límpielas con un paño.', 2],
    ['es', 'Apague ese breaker. Déjelo apagado.', 1],
    ['fr', 'Mettez les boutons à Off. Ensuite, essuyez le brûleur.', 2],
    ['fr', 'Coupez ce disjoncteur. Laissez ce disjoncteur coupé.', 1],
    ['ar', 'أدر المفتاح إلى Off. ثم امسح الشعلة.', 2],
    ['ar', 'افصل هذا القاطع. اترك القاطع مفصولا.', 1],
  ])('is seen to ask for as many: %s: %s', (language, line, deeds) => {
    expect(deedsIn(language, line)).toBe(deeds);
  });
});
