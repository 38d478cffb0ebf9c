import { expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import { at, connect, fact, flush, flushWith, setBack } from '../testing/joint-items.js';
import { lines } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { noContact } from './no-contact.js';
import { partUnattached } from './part-unattached.js';
import { referenceMissing } from './reference-missing.js';
import { shelfProud } from './shelf-proud.js';

const told = (...[check, spec]: Parameters<typeof foundBy>) =>
  foundBy(check, spec).map(({ message }) => words(message));

it('a mitre that names no outer side has no reference', () => {
  const mitred = sides()
    .part('top', 'level')
    .joint('mitre', 'top', 'between lh and rh', flush('top', 'rear', 'front'), connect('biscuit20', lines(70, 490)))
    .build();
  expect(told(referenceMissing, mitred)).toEqual([
    'top meets lh and rh in a mitre, and nothing says which is its outer side: the slots are measured from the outer corner',
  ]);
});

it('a part with both faces fixed has none either', () => {
  const fixed = sides()
    .part('shelf', 'level')
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      fact(at('bottom', 100, 'above', 'lh.bottom')),
      fact(at('top', '117.7', 'above', 'lh.bottom')),
      flush('rear', 'front'),
      connect('biscuit20', lines(70, 490)),
    )
    .build();
  expect(told(referenceMissing, fixed)[0]).toContain('both its bottom and its top face fixed');
});

it('a notch can take away all that two parts would touch with', () => {
  const notched = sides()
    .part('rail', 'facing')
    .of('height', 50, 'rail')
    .notch('lh, rh', ['front', 'bottom'], { depth: 80, height: 60 })
    .joint(
      'butt',
      'rail',
      'between lh and rh',
      fact(setBack('front', 10, 'lh')),
      flush('bottom'),
      connect('tenon8', lines(25)),
    )
    .build();
  expect(told(noContact, notched)[0]).toContain('a notch takes away what they would touch with');
});

it('parts that hold on to each other but to nothing else are told together', () => {
  const loose = sides()
    .part('shelf', 'level')
    .part('tray', 'level')
    .part('lip', 'facing')
    .joint('butt', 'shelf', 'between lh and rh', fact(at('bottom', 100, 'above', 'lh.bottom')), flush('rear', 'front'))
    .joint('butt', 'lip', 'to tray.front')
    .build();
  expect(told(partUnattached, loose)).toEqual([
    'lip and tray hold on to each other, but no joint holds them to the rest of the cabinet',
  ]);
});

it('a distance from the very side of the host says that a part is meant to stand out', () => {
  const shelf = (...facts: Parameters<typeof fact>[0][]) =>
    sides()
      .part('shelf', 'level')
      .joint(
        'butt',
        'shelf',
        'between lh and rh',
        fact(at('bottom', 100, 'above', 'lh.bottom')),
        flush('rear'),
        ...facts.map(fact),
      )
      .place('rh', flushWith('front', 'lh'))
      .build();
  expect(told(shelfProud, shelf(at('front', 20, 'in front of', 'lh.front')))).toEqual([]);
  expect(told(shelfProud, shelf(at('front', 580, 'in front of', 'lh.rear')))).toEqual([
    'the front of shelf stands 20 proud of lh and rh; more than 0.3 is felt and seen',
  ]);
});
