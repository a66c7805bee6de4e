// Reads a grammar in the EBNF of ISO/IEC 14977, as far as ours uses it, into its rules.

/** The marks of the EBNF itself: a comment, a special sequence, a terminal, a name, or one of the signs. */
const mark = /\(\*([^]*?)\*\)|\?([^?]*)\?|"([^"]*)"|'([^']*)'|([A-Za-z][A-Za-z0-9 \t\n]*[A-Za-z0-9]|[A-Za-z])|([=,|;[\]{}()-])|(\s+)/y;

function marksOf(text) {
  const marks = [];
  mark.lastIndex = 0;
  while (mark.lastIndex < text.length) {
    const at = mark.lastIndex;
    const found = mark.exec(text);
    if (!found) {
      throw new Error(`line ${text.slice(0, at).split('\n').length}: no mark of the EBNF begins with ${JSON.stringify(text.slice(at, at + 20))}`);
    }
    const [, comment, special, double, single, name, sign] = found;
    if (comment !== undefined) {
      const heading = /^ =+ (.*?) =+ $/.exec(comment);
      if (heading) {
        marks.push({ is: 'heading', text: heading[1], at });
      }
    } else if (special !== undefined) {
      marks.push({ is: 'special', text: special.trim(), at });
    } else if (double !== undefined || single !== undefined) {
      marks.push({ is: 'terminal', text: double ?? single, at });
    } else if (name !== undefined) {
      marks.push({ is: 'name', text: name.replace(/\s+/g, ' '), at });
    } else if (sign !== undefined) {
      marks.push({ is: sign, text: sign, at });
    }
  }
  return marks;
}

/**
 * The rules by their names, in order, each `{ name, layer, body }`; the layer is the heading above it. A body is one of
 * { is: 'choice' | 'row', of: [...] }, { is: 'option' | 'repeated', of }, { is: 'except', of, but },
 * { is: 'terminal' | 'special' | 'name', text }. Throws where a name has no rule, or two.
 */
export function readEbnf(text) {
  const marks = marksOf(text);
  let at = 0;
  const line = () => text.slice(0, marks[at]?.at).split('\n').length;
  const take = is => {
    if (marks[at]?.is !== is) {
      throw new Error(`line ${line()}: expected ${is}, found ${marks[at]?.text ?? 'the end'}`);
    }
    return marks[at++];
  };
  const listOf = (is, sign, part) => {
    const of = [part()];
    while (marks[at]?.is === sign) {
      at++;
      of.push(part());
    }
    return of.length === 1 ? of[0] : { is, of };
  };
  const closed = (is, end) => {
    at++;
    const of = choice();
    take(end);
    return is ? { is, of } : of;
  };
  const primary = () => {
    switch (marks[at]?.is) {
      case '[':
        return closed('option', ']');
      case '{':
        return closed('repeated', '}');
      case '(':
        return closed(undefined, ')');
      case 'terminal':
      case 'special':
        return { is: marks[at].is, text: marks[at++].text };
      default:
        return { is: 'name', text: take('name').text };
    }
  };
  const term = () => {
    const of = primary();
    if (marks[at]?.is !== '-') {
      return of;
    }
    at++;
    return { is: 'except', of, but: primary() };
  };
  const choice = () => listOf('choice', '|', () => listOf('row', ',', term));

  const rules = new Map();
  let layer = '';
  while (at < marks.length) {
    if (marks[at].is === 'heading') {
      layer = marks[at++].text;
      continue;
    }
    const name = take('name').text;
    if (rules.has(name)) {
      throw new Error(`line ${line()}: ${name} has a rule already`);
    }
    take('=');
    rules.set(name, { name, layer, body: choice() });
    take(';');
  }
  for (const { name, body } of rules.values()) {
    const missing = namesIn(body).find(used => !rules.has(used));
    if (missing) {
      throw new Error(`${name}: ${missing} has no rule`);
    }
  }
  return rules;
}

function namesIn(body) {
  return body.is === 'name' ? [body.text] : [body.of ?? [], body.but ?? []].flat().flatMap(namesIn);
}
