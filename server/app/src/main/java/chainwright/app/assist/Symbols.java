package chainwright.app.assist;

import chainwright.notation.diagnostic.Place;
import chainwright.notation.model.Definition;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** Finds chains, buses, presets and sessions by a part of their name. */
public final class Symbols {

  /** What a symbol is. */
  public enum Kind {
    /** A chain. */
    CHAIN,
    /** A bus. */
    BUS,
    /** A preset. */
    PRESET,
    /** A session. */
    SESSION
  }

  /**
   * Something that was found.
   *
   * @param kind what it is
   * @param name its name; of a session, its title
   * @param title its title, or empty text
   * @param file the key of its file
   * @param place where the name stands
   */
  public record Symbol(Kind kind, String name, String title, String file, Place place) {}

  private record Ranked(Symbol symbol, int rank) {}

  private Symbols() {}

  /**
   * Finds what a query may mean: its letters stand in the name or the title, in this order, with
   * others between them or not; letter case does not matter.
   *
   * @param files the files to look in
   * @param query what is looked for; empty for everything
   * @param limit how many to return at most
   * @return names that begin with the query first, then those that hold it, then titles that hold
   *     it, then those with other letters between; equals in the order of their names
   */
  public static List<Symbol> find(List<SourceFile> files, String query, int limit) {
    String wanted = query.strip().toLowerCase(Locale.ROOT);
    List<Ranked> ranked = new ArrayList<>();
    for (SourceFile file : files) {
      for (Definition definition : file.definitions()) {
        symbol(definition, file)
            .ifPresent(
                symbol ->
                    rank(symbol, wanted).ifPresent(rank -> ranked.add(new Ranked(symbol, rank))));
      }
    }
    return ranked.stream()
        .sorted(
            Comparator.comparingInt(Ranked::rank)
                .thenComparing(one -> one.symbol().name())
                .thenComparing(one -> one.symbol().file()))
        .limit(limit)
        .map(Ranked::symbol)
        .toList();
  }

  private static OptionalInt rank(Symbol symbol, String wanted) {
    String name = symbol.name().toLowerCase(Locale.ROOT);
    String title = symbol.title().toLowerCase(Locale.ROOT);
    if (name.startsWith(wanted)) {
      return OptionalInt.of(0);
    }
    if (name.contains(wanted)) {
      return OptionalInt.of(1);
    }
    if (title.contains(wanted)) {
      return OptionalInt.of(2);
    }
    return isSpread(name, wanted) || isSpread(title, wanted)
        ? OptionalInt.of(3)
        : OptionalInt.empty();
  }

  private static boolean isSpread(String text, String wanted) {
    int at = 0;
    for (int i = 0; i < wanted.length(); i++) {
      at = text.indexOf(wanted.charAt(i), at) + 1;
      if (at == 0) {
        return false;
      }
    }
    return true;
  }

  private static Optional<Symbol> symbol(Definition definition, SourceFile file) {
    if (definition instanceof Definition.Track track) {
      Kind kind = track.isBus() ? Kind.BUS : Kind.CHAIN;
      return Optional.of(
          symbol(kind, track.name().text(), track.title(), file, track, track.name().span()));
    }
    if (definition instanceof Definition.Preset preset) {
      return Optional.of(
          symbol(
              Kind.PRESET,
              preset.name().text(),
              preset.title(),
              file,
              preset,
              preset.name().span()));
    }
    return definition instanceof Definition.Session session
        ? Optional.of(symbol(Kind.SESSION, session.title(), "", file, session, session.lineSpan()))
        : Optional.empty();
  }

  private static Symbol symbol(
      Kind kind, String name, String title, SourceFile file, Definition in, TextSpan span) {
    return new Symbol(kind, name, title, file.key(), new Place(in.section(), span));
  }
}
