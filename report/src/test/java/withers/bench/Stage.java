package withers.bench;

import static java.util.stream.Collectors.joining;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import withers.bench.BenchWorld.Month;

/** The stages, in the order in which they run; each but the yardsticks stands beside another. */
enum Stage {
  READ_LINES("read the bytes, count lines", Unit.ROWS, () -> Yardsticks::readLines),
  PARSE("parse with Commons CSV", Unit.ROWS, () -> Yardsticks::parse, READ_LINES),
  ASK_BY_ARG_MAX(
      "DuckDB: the core question",
      Unit.ROWS,
      () -> CoreQuestion.of(Month.FIRST, "newest_by_arg_max"),
      PARSE),
  ASK_BY_WINDOW(
      "... the newest by a window",
      Unit.ROWS,
      () -> CoreQuestion.of(Month.FIRST, "newest_by_window"),
      PARSE),
  FIRST_IMPORT("first import", Unit.ROWS, () -> Imports::first, PARSE),
  IMPORT_AGAIN("import the same files again", Unit.ROWS, () -> Imports::again, READ_LINES),
  ENCODE("encode chunks in memory", Unit.EVENTS, () -> Yardsticks::encode),
  DECODE("decode chunks in memory", Unit.EVENTS, () -> Yardsticks::decode),
  COPY("copy the chunks in memory", Unit.BYTES, () -> Limits::copy),
  COMPRESS("compress them by zstd", Unit.BYTES, () -> Limits::compress),
  DECOMPRESS("decompress them", Unit.BYTES, () -> Limits::decompress),
  WRITE_FILE("write them, compressed, to a file", Unit.BYTES, () -> Limits::writeFile),
  WRITE_SQLITE("write them, compressed, by SQLite", Unit.BYTES, () -> Limits::writeSqlite),
  REPLAY_ON_1("replay, 1 thread", Unit.EVENTS, () -> Replays.read(1), DECODE),
  REPLAY_ON_2("replay, 2 threads", Unit.EVENTS, () -> Replays.read(2), DECODE),
  JUDGE_ON_1("replay, fold, rules, 1 thread", Unit.EVENTS, () -> Replays.judge(1), REPLAY_ON_1),
  JUDGE_ON_2("replay, fold, rules, 2 threads", Unit.EVENTS, () -> Replays.judge(2), REPLAY_ON_2),
  RECONCILE("reconcile, nothing kept", Unit.ANIMALS, () -> Commands.reconcile(Month.FIRST)),
  LISTS("lists", Unit.FINDINGS, () -> Commands.lists(Month.FIRST)),
  RECONCILE_AGAIN(
      "reconcile again", Unit.ANIMALS, () -> Commands.reconcile(Month.FIRST), RECONCILE),
  IMPORT_UNCHANGED("a later export, unchanged", Unit.ROWS, () -> Imports::unchanged, READ_LINES),
  NEXT_RUN("the next month by one run", Unit.ROWS, () -> Commands.run(Month.NEXT), READ_LINES),
  NEXT_IMPORT("the next month's import", Unit.ROWS, () -> Imports::next, READ_LINES),
  NEXT_RECONCILE("... reconcile", Unit.ANIMALS, () -> Commands.reconcile(Month.NEXT), RECONCILE),
  NEXT_LISTS("... lists", Unit.FINDINGS, () -> Commands.lists(Month.NEXT), LISTS),
  TRACE("trace one number, cold", Unit.NUMBERS, () -> ColdTrace::run);

  /** Those that import. */
  static final Set<Stage> IMPORTS =
      Collections.unmodifiableSet(
          EnumSet.of(FIRST_IMPORT, IMPORT_UNCHANGED, IMPORT_AGAIN, NEXT_IMPORT));

  private final String title;
  private final Unit unit;
  private final Supplier<Work> work;
  private final Optional<Stage> beside;

  Stage(String title, Unit unit, Supplier<Work> work, Stage... beside) {
    this.title = title;
    this.unit = unit;
    this.work = work;
    this.beside = Arrays.stream(beside).findFirst();
  }

  String title() {
    return title;
  }

  Unit unit() {
    return unit;
  }

  Work work() {
    return work.get();
  }

  /** The plainer stage of the same run that this one's speed is compared with. */
  Optional<Stage> beside() {
    return beside;
  }

  /** The stage's name in JSON and on the command line. */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static Stage of(String word) {
    return Arrays.stream(values())
        .filter(stage -> stage.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "Expected one of %s, but found %s"
                        .formatted(
                            Arrays.stream(values()).map(Stage::word).collect(joining(", ")),
                            word)));
  }
}
