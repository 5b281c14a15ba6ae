import { describe, expect, it } from 'vitest';
import { content } from '../../../src/content/load.ts';
import { glossarySchema, refused } from '../../../src/text/glossary.ts';
import { tellTranslation } from '../../../src/text/language-words.ts';

const glossary = glossarySchema.parse({
  unlock: { use: ['unlock'], never: [String.raw`\blets? go\b`], why: 'Hands let go.' },
  around: { use: ['around'], never: [String.raw`\bround the\b`], why: 'It is British.' },
});
const found = (value: unknown, of = glossary) =>
  refused(value, 'file:', of).map((one) => `${one.path} ${'found' in one ? one.found : ''}`);

describe('what no sentence says', () => {
  it('is found wherever it stands, in capitals too, with its place', () => {
    const texts = { title: 'The door Lets go', lines: ['Wait.', 'Look all round the door.'] };
    expect(found(texts)).toEqual(['file:title Lets go', 'file:lines.1 round the']);
  });

  it('is no part of another word, and no name', () => {
    expect(found({ title: 'Look around the door: it let Gordon out.', from: 'lets go' })).toEqual(
      [],
    );
  });

  it('is told with what to say in its place, and why', () => {
    const [problem] = refused({ title: 'It lets go' }, 'file:', glossary);
    expect(problem && tellTranslation(problem)).toEqual({
      what: 'file:title: the glossary refuses “lets go”.',
      hint: 'Say “unlock”. Hands let go.',
    });
  });

  it.each([
    ['a pattern that cannot be read', { use: ['unlock'], never: ['(let go'], why: 'Hands.' }],
    ['no reason', { use: ['unlock'], never: ['let go'] }],
    ['nothing to say instead', { use: [], never: ['let go'], why: 'Hands.' }],
  ])('is not refused with %s', (_, term) => {
    expect(glossarySchema.safeParse({ unlock: term }).success).toBe(false);
  });

  it('knows words of any script, both apostrophes and all spaces', () => {
    const term = (never: string) => ({ never: [never], use: ['x'], why: 'y' });
    const of = glossarySchema.parse({
      edge: term(String.raw`\bété\b`),
      apostrophe: term("l'alu"),
      space: term('à 5'),
    });
    expect(found({ a: 'bété étés', b: 'l’été', c: 'L’alu', d: 'À\u202f5' }, of)).toEqual([
      'file:b été',
      "file:c L'alu",
      'file:d À 5',
    ]);
  });
});

/** Sentences as this site once had them, each beside what a native editor made of it. */
const mended: Readonly<Record<string, readonly (readonly [old: string, mended: string])[]>> = {
  en: [
    ['If that panel is dry', 'If the breaker panel is dry'],
    ['Get all people out.', 'Get everyone out.'],
    ['Turn off the dryer and air cooling.', 'Turn off the dryer and the air conditioner.'],
    ['Smoke or gas you can’t smell', 'Smoke or carbon monoxide'],
    ['Walk round the range.', 'Walk around the range.'],
    ['Leave it over night.', 'Leave it overnight.'],
  ],
  es: [
    ['Si ese panel está seco y sin ruido', 'Si la caja de breakers está seca y sin ruidos'],
    ['El panel está seco: apáguelo.', 'La caja está seca: apague ese breaker.'],
    ['la grasa no puede prenderse', 'y no hay grasa que se prenda'],
    ['El seguro se suelta solo mientras', 'El seguro solo se suelta si'],
    ['El seguro se mueve solo cuando', 'El seguro solo se mueve si'],
    ['cortada y comprobada', 'cortada y con ausencia de tensión comprobada'],
    ['Apagada, fría, sin tensión comprobada', 'Apagada y fría; ausencia de tensión comprobada'],
    ['No mueva las llaves de gas', 'No mueva la llave de paso del gas'],
    ['Si no puede apagarlo', 'Si no puede apagar ese breaker'],
    ['El humo puede matar a los pájaros', 'Los vapores pueden matar a los pájaros'],
    ['Diga que huele fuerte', 'Diga que el olor irrita la nariz'],
    ['una tapa o una bandeja', 'una tapa o una bandeja de metal para hornear'],
    ['No tire de ella', 'No la jale'],
    ['Deje apagado el disyuntor', 'Deje apagado el breaker (disyuntor)'],
    ['humo o un gas que no se huele', 'humo o monóxido de carbono'],
    ['Apague la secadora y el aire frío', 'Apague la secadora y el aire acondicionado'],
    ['hasta que alguien la revise', 'hasta que la revise un técnico con licencia'],
    ['Sin riesgos.', 'Solo pruebas sencillas.'],
    ['Irrita', 'Es cáustico: guantes y lentes'],
    ['llamada o carta', 'llamada, correo electrónico o carta'],
    ['Algunos cajones se hacen para calentar', 'Algunos cajones se calientan a propósito'],
    ['borrar a quien llama', 'borrar los datos del cliente'],
    ['Todo puede quedar abierto', 'Puede dejar en blanco lo que no sepa'],
    ['lo lee de vuelta', 'ahora el cliente se lo repite'],
    ['Léalo signo por signo', 'Léalo letra por letra, número por número'],
    ['su aparato durmió', 'el teléfono se apagó'],
    ['Deje enfriar el horno, puerta cerrada', 'Deje enfriar el horno con la puerta cerrada'],
    ['toda cifra está mal al azar', 'en cada ensayo se alteran todas las cifras al azar'],
    ['Pieza que condena un mal resultado', 'Pieza que se cambia si falla'],
    ['Se busca un código', 'Buscando un código'],
    ['la línea de envenenamientos', 'Control de Envenenamientos (Poison Help)'],
    ['la ronda', 'la ruta del día'],
    ['Anote justo lo que muestra', 'Anote exactamente lo que muestra'],
    ['No vuelva a cortar la corriente.', 'No vuelva a apagar y encender el breaker.'],
    ['No estoy seguro', 'No lo sé'],
    ['No use las hornillas', 'No use los quemadores'],
  ],
  fr: [
    ['sondes pincées, personne à proximité.', 'sondes pincées. Tenez tout le monde à distance.'],
    ['Plus de fumée, ou seulement une odeur', 'Aucune fumée, ou seulement une odeur'],
    ['Tiède, mais moins qu’avant', 'Encore chaud, mais moins qu’avant'],
    ['Des bips forts, sans arrêt', 'Plusieurs bips forts à la suite, qui recommencent'],
    ['Nous avons laissé la fin', 'Nous avons retiré la fin'],
    ['Elle a été laissée', 'Elle a été ignorée'],
    ['ou laissez les longues colonnes', 'ou enlevez les longues colonnes'],
    ['À lire au client', 'Lu au client'],
    ['Laissez l’autonettoyage.', 'N’utilisez pas l’autonettoyage.'],
    ['la graisse ne peut pas prendre feu', 'et il y a moins de graisse qui puisse prendre feu'],
    ['la maison avec les plaques ou le four', 'avec le four, les brûleurs ou les éléments'],
    ['Ceux des plaques aussi', 'y compris ceux des brûleurs et des éléments'],
    ['Gardez enfants et animaux dehors', 'Gardez enfants et animaux hors de la cuisine'],
    ['Restez tout près', 'Restez à proximité'],
    ['Appelez bien loin.', 'Éloignez-vous, puis appelez.'],
    ['jusqu’à ce que quelqu’un l’ait vue', 'jusqu’à ce qu’un technicien agréé l’ait vérifiée'],
    ['Faites-la voir', 'Faites-la vérifier'],
    ['un gaz que l’on ne sent pas', 'monoxyde de carbone'],
    ['un feu ou un gaz', 'un feu ou du monoxyde de carbone'],
    ['Il pique', 'Corrosif : gants et lunettes'],
    ['d’un coup ou avec un bang', 'avec un souffle ou une détonation'],
    ['Le four est-il droit?', 'Le four est-il de niveau?'],
    ['Laissez la porte tranquille', 'Ne touchez pas à la porte'],
    ['une chose vue est anormal', 'quelque chose d’anormal'],
    ['signe par signe', 'caractère par caractère'],
    ['l’alu', 'le papier d’aluminium'],
    ['5 cm', '2 pouces'],
    ['Chacun a sa propre issue', 'La solution n’est pas la même'],
    ['un air mauvais', 'le monoxyde de carbone'],
    ['réponse suivante va encore', 'réponse suivante reste valable'],
    ['Tout cela est à votre choix', 'Tout est facultatif'],
    ['les gens agréés', 'les professionnels agréés'],
    ['Qui tient cette copie', 'Qui exploite ce site'],
    ['Morte après un orage', 'Ne s’allume plus après un orage'],
    ['encore et encore', 'à répétition'],
    ['restant', 'Temps restant'],
    ['le tableau électrique', 'le panneau électrique'],
    ['un détecteur de fumée', 'un avertisseur de fumée'],
    ['1091.5', '1091,5'],
    ['Je n’en suis pas sûr', 'Je ne sais pas'],
    ['silencieux, coupez-le', 'silencieux, coupez ce disjoncteur'],
    ['. Laissez-le coupé.', '. Laissez ce disjoncteur coupé.'],
    ['Ne coupez pas le courant de nouveau.', 'Ne remettez plus le courant pour essayer.'],
    ['C’est parti.', 'Le problème a disparu.'],
    ['avec un chiffon', 'avec un linge'],
    ['Est-il froid\u202f?', 'Est-il froid?'],
  ],
  ar: [
    ['عندما يكون الغاز كثيرا', 'عندما يكون أول أكسيد الكربون كثيرا'],
    ['دخانا أو غازا لا تشم رائحته', 'دخانا أو أول أكسيد الكربون'],
    ['الحريق أو الغاز', 'الحريق أو أول أكسيد الكربون'],
    ['لكنه قد يحرقك', 'لكنه ما زال يمكن أن يحرقك'],
    ['اترك التنظيف الذاتي', 'لا تشغّل التنظيف الذاتي'],
    ['من يوم إلى يوم', 'فجأة، بين يوم وليلة'],
    ['راقب أول خبز', 'راقب الفرن أول مرة تستخدمه'],
    ['يشعر بالمرض', 'يشعر بتوعك'],
    ['إنذار يزقزق', 'صفير قصير متقطع'],
    ['اشتر إنذارا', 'اشتر جهاز إنذار'],
    ['رذاذ الأفران', 'بخاخ تنظيف الأفران'],
    ['2 بوصة', 'بوصتين'],
    ['أو يذوب عليه', 'أو يذوب على أرضيته'],
    ['نظف مرشح الشفاط كثيرا', 'نظف مرشح الشفاط بانتظام'],
    ['ما ليس هذا', 'ما لا يفعله هذا الدليل'],
    ['شعلة كهربائية تبقى مظلمة', 'عين كهربائية لا تسخن'],
    ['القول الفصل لكتيب الاستعمال', 'اتبع كتيب الاستعمال'],
    ['عنوة', 'بالقوة'],
    ['علامة بعد علامة', 'حرفا حرفا ورقما رقما'],
    ['بخط السموم', 'بمركز السموم (Poison Help)'],
    ['سبب شائع للإنذار الكاذب', 'كثيرا ما يُظن عطلا'],
    ['الماء يأخذ الشرارة', 'الماء يمنع الشرارة'],
    ['أخل الطريق', 'أفسح الطريق'],
    ['منذ 1 إلى 4 ساعات', 'منذ ساعة إلى 4 ساعات'],
    ['صوت المروحة هواء هادئ', 'صوت المروحة خافت ومنتظم'],
    ['لتنسى ما علقت فيه', 'لتبدأ من جديد'],
    ['عند الاستدعاء', 'عند استدعاء المنتج'],
    ['وهي أهم شيء أولا', 'اهتم بها قبل أي شيء'],
    ['10 حتى 15 دقيقة', 'من 10 إلى 15 دقيقة'],
    ['الفرن قد يحرقك حتى الآن', 'ما زال يمكن أن يحرقك الفرن'],
    ['لا تترك البيت وهو يسخن', 'لا تترك البيت والموقد يسخن'],
    ['ابتعد عن البيت مشيا', 'امش بعيدا عن البيت'],
    ['القاطع الذي لم يثبت في مكانه', 'القاطع الذي يبقى بين On وOff'],
  ],
};

describe.each(Object.entries(mended))('a mistake once mended in %s', (language, pairs) => {
  const own = content().glossary(language);
  const terms = own.ok ? own.value : {};

  it.each(pairs)('cannot return: %s', (old, now) => {
    expect(found(old, terms)).not.toEqual([]);
    expect(found(now, terms)).toEqual([]);
  });
});
