package withers.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** A run as a table for people. */
record BenchTable(BenchRun run) {

  private static final String ROW = "%-34s %21s %9s %9s %9s %9s %14s %24s %8s";
  private static final double MEGABYTE = 1e6;

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(setting());
    lines.add("");
    lines.add(
        row(
            "stage",
            "count",
            "seconds",
            "CPU s",
            "compiling",
            "collector",
            "per second",
            "speed beside",
            "peak MB"));
    for (Stage stage : Stage.values()) {
      run.find(stage).map(measured -> line(stage, measured)).ifPresent(lines::add);
    }
    lines.add("");
    run.find(Stage.FIRST_IMPORT).map(BenchTable::sizes).ifPresent(lines::addAll);
    run.find(Stage.JUDGE_ON_1).map(BenchTable::animals).ifPresent(lines::add);
    lines.add("");
    Leaning.ALL.stream().filter(one -> one.isIn(run)).map(this::leaning).forEach(lines::add);
    lines.add("");
    Aim.of(run).forEach(aim -> lines.add(aim.line()));
    return lines;
  }

  private String leaning(Leaning leaning) {
    Measured stage = run.of(leaning.stage());
    double least = leaning.least(run);
    return text(
        "%-34s %8.2f s; its %,.1f MB: %s %8.3f s, %,.1f times",
        leaning.stage().title(),
        stage.seconds(),
        leaning.bytes(run) / MEGABYTE,
        leaning.limit().word(),
        least,
        stage.seconds() / least);
  }

  private String setting() {
    Machine machine = run.machine();
    return text(
        "%,d rows asked for, seed %d; %s; heap %s; %d processors, %.0f GB, load %.1f before; Java %s",
        run.rows(),
        run.seed(),
        run.mix(),
        run.heap(),
        machine.processors(),
        machine.memoryBytes() / 1e9,
        machine.loadAverage(),
        machine.java());
  }

  private String line(Stage stage, Measured measured) {
    return row(
        stage.title(),
        text("%,d %s", measured.count(), stage.unit().word()),
        text("%.2f", measured.seconds()),
        text("%.2f", measured.processorSeconds()),
        ofJvm(measured, JvmTime::compilers),
        ofJvm(measured, JvmTime::collector),
        text("%,.0f", measured.perSecond()),
        stage.beside().flatMap(other -> beside(other, measured)).orElse(""),
        measured.peakBytes().isPresent()
            ? text("%.0f", measured.peakBytes().getAsLong() / MEGABYTE)
            : "?");
  }

  private static String ofJvm(Measured measured, ToDoubleFunction<JvmTime> part) {
    return measured.ofJvm().map(taken -> text("%.2f", part.applyAsDouble(taken))).orElse("?");
  }

  private Optional<String> beside(Stage other, Measured measured) {
    return run.find(other)
        .map(plain -> text("%.3f of %s", measured.perSecond() / plain.perSecond(), other.word()));
  }

  private static List<String> sizes(Measured imported) {
    return List.of(
        size("exports", imported, "export-bytes", imported.count(), "row"),
        size("event log", imported, "log-bytes", imported.counted("events"), "event"),
        size("contact vault", imported, "vault-bytes", imported.counted("contacts"), "contact"));
  }

  /** How many had nothing wrong is what judging depends on most. */
  private static String animals(Measured judged) {
    long animals = judged.counted("animals");
    long found = judged.counted("found");
    return text(
        "%,d animals judged: %,d (%.1f %%) with a finding, %,d with a question or not judged besides,"
            + " the others with nothing to say; %,d findings, those about records included",
        animals,
        found,
        100.0 * found / animals,
        judged.counted("assessed") - found,
        judged.counted("findings"));
  }

  private static String size(String what, Measured imported, String bytes, long count, String of) {
    double all = imported.counted(bytes);
    return text(
        "%-14s %8.1f MB %,12d %-10s %6.1f bytes each",
        what, all / MEGABYTE, count, of + "s", all / count);
  }

  private static String row(Object... cells) {
    return text(ROW, cells).stripTrailing();
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
