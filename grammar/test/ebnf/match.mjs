// Recognises a row of signs (characters, or marks) by rules of an EBNF. Every way of reading is followed at once, so that an
// ambiguous grammar does as well as any other; what repeats without moving on is left alone.

/**
 * A matcher over `signs`. `terminal(text, signs, at)` gives where that terminal ends, or undefined where it does not stand there;
 * `specials` has such a function (signs, at) for each special sequence, by its words; `leaf(name, sign)` says true or false where
 * a name stands for a single sign here, and undefined where its rule is to be followed. With `isGreedy` only the longest way is
 * kept.
 */
export function matcher(rules, signs, { terminal, specials, leaf = () => undefined, isGreedy = false }) {
  const known = new Map();

  /** The ends of `body` at `at`, each with the matches of rules in it, as a list from the last to the first. */
  function ends(body, at) {
    const ways = waysOf(body, at);
    if (!isGreedy || ways.size < 2) {
      return ways;
    }
    const longest = Math.max(...ways.keys());
    return new Map([[longest, ways.get(longest)]]);
  }

  function waysOf(body, at) {
    switch (body.is) {
      case 'terminal':
        return to(terminal(body.text, signs, at));
      case 'special': {
        const special = specials[body.text];
        if (!special) {
          throw new Error(`nothing here knows what ? ${body.text} ? is`);
        }
        return to(special(signs, at));
      }
      case 'name':
        return ruleAt(body.text, at);
      case 'option':
        return first(ends(body.of, at), new Map([[at, undefined]]));
      case 'repeated':
        return repeated(body.of, at);
      case 'choice':
        return first(...body.of.map(part => ends(part, at)));
      case 'row':
        return body.of.reduce((ways, part) => then(ways, part), new Map([[at, undefined]]));
      case 'except': {
        const but = ends(body.but, at);
        return new Map([...ends(body.of, at)].filter(([end]) => !but.has(end)));
      }
    }
  }

  function ruleAt(name, at) {
    const isLeaf = leaf(name, signs[at]);
    if (isLeaf !== undefined) {
      return new Map(isLeaf ? [[at + 1, { match: { name, from: at, to: at + 1, inside: undefined } }]] : []);
    }
    const key = `${at} ${name}`;
    if (!known.has(key)) {
      // A rule that asks for itself at the same place finds nothing there.
      known.set(key, new Map());
      const ways = ends(rules.get(name).body, at);
      known.set(key, new Map([...ways].map(([end, inside]) => [end, { match: { name, from: at, to: end, inside } }])));
    }
    return known.get(key);
  }

  function repeated(part, at) {
    const all = new Map([[at, undefined]]);
    let open = all;
    while (open.size > 0) {
      const further = then(open, part);
      open = new Map([...further].filter(([end]) => !all.has(end)));
      open.forEach((inside, end) => all.set(end, inside));
    }
    return all;
  }

  function then(ways, part) {
    const further = new Map();
    for (const [middle, before] of ways) {
      for (const [end, inside] of ends(part, middle)) {
        if (!further.has(end)) {
          further.set(end, inside === undefined ? before : before === undefined ? inside : { before, inside });
        }
      }
    }
    return further;
  }

  return {
    /** The match of rule `name` with all signs; undefined where there is none. */
    match(name) {
      return ruleAt(name, 0).get(signs.length)?.match;
    },
  };
}

function to(end) {
  return new Map(end === undefined ? [] : [[end, undefined]]);
}

/** The ways of several maps; where two end alike, the earlier one's. */
function first(...maps) {
  const all = new Map();
  for (const map of maps) {
    map.forEach((inside, end) => all.has(end) || all.set(end, inside));
  }
  return all;
}

/** The rules that were matched right below a match, in order. */
export function below({ inside }) {
  const found = [];
  const walk = part => {
    if (part === undefined) {
      return;
    }
    if (part.match) {
      found.push(part.match);
    } else {
      walk(part.before);
      walk(part.inside);
    }
  };
  walk(inside);
  return found;
}

/** All matches of rules with one of these names in a match, from outside in. */
export function within(match, names) {
  return [...(names.includes(match.name) ? [match] : []), ...below(match).flatMap(part => within(part, names))];
}
