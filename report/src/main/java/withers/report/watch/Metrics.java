package withers.report.watch;

import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MultiGauge;
import io.micrometer.core.instrument.Tags;
import io.micrometer.core.instrument.Timer;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import withers.kafka.KafkaCounts;
import withers.log.Tally;
import withers.report.watch.Standing.Job;

/**
 * The numbers of a schedule, as Prometheus reads them. Labels are names of jobs, commands, kinds of
 * findings and steps of mails: nothing of organisations, sources or people. Safe for several
 * threads.
 */
public final class Metrics {
  private final PrometheusMeterRegistry registry =
      new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
  private final AtomicReference<Standing> standing;
  private final MultiGauge succeeded =
      gauge("withers.job.last.success", "seconds", "Last good end");
  private final MultiGauge due = gauge("withers.job.next.due", "seconds", "Next due time");
  private final MultiGauge codes = gauge("withers.job.last.exit.code", null, "Last exit code");
  private final MultiGauge rows =
      gauge("withers.import.rows", null, "Rows of all imports on the log, by what became of them");
  private final MultiGauge findings =
      gauge("withers.run.findings", null, "Findings of the latest run, by kind");
  private final MultiGauge mails =
      gauge("withers.mails", null, "Lists that were to be sent, by the newest step of each");

  /** Numbers of a workspace as it stands. */
  public Metrics(Standing first) {
    this.standing = new AtomicReference<>(first);
    number("withers.import.events", "Events of all imports on the log", s -> s.imported().events());
    number("withers.log.bytes", "Size of the embedded log", Standing::logBytes);
    number("withers.quarantine.files", "Files of rows to put right", s -> s.quarantine().size());
    number("withers.inbox.refused", "Files that could not be taken", s -> s.refused().size());
    number("withers.mails.unsure", "Mails of which nobody is sure", s -> s.unsure().size());
    number("withers.run.animals", "Animals of the latest run", s -> run(s, Standing.Run::animals));
    kafka(KafkaCounts.ofThisProcess());
    set(first);
  }

  private void kafka(KafkaCounts counts) {
    Gauge.builder("withers.kafka.lag", counts, KafkaCounts::lag)
        .description("Offsets that are left to read of what is being read of the log on Kafka")
        .register(registry);
    counter("withers.kafka.bytes", counts, KafkaCounts::bytesRead)
        .tag("direction", "read")
        .register(registry);
    counter("withers.kafka.bytes", counts, KafkaCounts::bytesWritten)
        .tag("direction", "written")
        .register(registry);
    counter("withers.kafka.aborts", counts, KafkaCounts::aborts).register(registry);
  }

  private static FunctionCounter.Builder<KafkaCounts> counter(
      String name, KafkaCounts counts, ToDoubleFunction<KafkaCounts> number) {
    return FunctionCounter.builder(name, counts, number)
        .description("What went through clients of Kafka, since the schedule is up");
  }

  private static double run(Standing standing, ToDoubleFunction<Standing.Run> number) {
    return standing.run().stream().mapToDouble(number).sum();
  }

  private MultiGauge gauge(String name, @Nullable String unit, String words) {
    return MultiGauge.builder(name).baseUnit(unit).description(words).register(registry);
  }

  private void number(String name, String words, ToDoubleFunction<Standing> number) {
    Gauge.builder(name, standing, held -> number.applyAsDouble(held.get()))
        .description(words)
        .register(registry);
  }

  /** From now on it stands so. */
  public void set(Standing now) {
    standing.set(now);
    succeeded.register(
        jobs(now, job -> job.state().succeeded().map(Instant::getEpochSecond).orElse(0L)), true);
    due.register(jobs(now, job -> job.next().map(Instant::getEpochSecond).orElse(0L)), true);
    codes.register(jobs(now, job -> job.state().last().map(last -> last.code()).orElse(0)), true);
    rows.register(rows(now.imported()), true);
    now.run().ifPresent(run -> findings.register(counts("kind", run.findings()), true));
    mails.register(counts("step", now.mails()), true);
  }

  private static List<MultiGauge.Row<?>> jobs(Standing now, ToDoubleFunction<Job> number) {
    return now.jobs().stream()
        .<MultiGauge.Row<?>>map(job -> row("job", job.name(), number.applyAsDouble(job)))
        .toList();
  }

  private static List<MultiGauge.Row<?>> rows(Tally tally) {
    return Stream.<MultiGauge.Row<?>>of(
            row("outcome", "applied", tally.applied()),
            row("outcome", "unchanged", tally.unchanged()),
            row("outcome", "rejected", tally.rejected()))
        .toList();
  }

  private static List<MultiGauge.Row<?>> counts(String label, Map<String, Long> counts) {
    return counts.entrySet().stream()
        .<MultiGauge.Row<?>>map(entry -> row(label, entry.getKey(), entry.getValue()))
        .toList();
  }

  private static MultiGauge.Row<?> row(String label, String value, Number number) {
    return MultiGauge.Row.of(Tags.of(label, value), number);
  }

  /** A command of a job took this long. */
  public void took(String command, Duration time) {
    Timer.builder("withers.command")
        .description("How long commands took, since the schedule is up")
        .tag("command", command)
        .register(registry)
        .record(time);
  }

  /** All of them, in Prometheus's text format. */
  public String text() {
    return registry.scrape();
  }

  /** Names of jobs whose last start did not end well. */
  List<String> failing() {
    return standing.get().jobs().stream()
        .filter(job -> job.state().last().filter(last -> !last.isGood()).isPresent())
        .map(Job::name)
        .toList();
  }
}
