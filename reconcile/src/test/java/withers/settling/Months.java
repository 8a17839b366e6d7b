package withers.settling;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import withers.answered.Answering;
import withers.cases.Answered;
import withers.cases.CaseKey;
import withers.cases.Settlement;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.log.EventLog;
import withers.log.memory.MemoryEventLog;
import withers.point.Points;
import withers.run.Listing;
import withers.run.Recorder;
import withers.world.World;

/** Months in which exports come, runs are made and people settle what they found out. */
public final class Months {

  public final EventLog log = new MemoryEventLog();
  private final AtomicLong ids = new AtomicLong(1000);
  private World world = World.of("");

  /** Imports exports; those of earlier months stay on the log. */
  public Months imported(String lines) {
    World more = World.of(lines);
    more.exports().forEach(e -> e.importInto(log, new UUID(0, ids.incrementAndGet()), 10));
    world = more;
    return this;
  }

  public World world() {
    return world;
  }

  public RunResult run(String asOf) {
    return run(Scope.asOf(LocalDate.parse(asOf)));
  }

  public RunResult run(Scope scope) {
    return new Recorder(
            log,
            clock(scope.asOf()),
            () -> new ImportId(new UUID(1, ids.incrementAndGet())),
            new Listing(World.DIRECTORY, 0),
            Points.NONE)
        .record(world.reconciliation(1).judge(log.snapshot(), scope), scope);
  }

  /** Somebody settles a run's follow-up on a day. */
  public boolean settle(RunResult run, CaseKey key, Answer answer, String day) {
    return settle(run, key, answer, day, Optional.empty());
  }

  public boolean settle(
      RunResult run, CaseKey key, Answer answer, String day, Optional<String> until) {
    return write(key, made(run, key, answer, Optional.empty(), Optional.empty()), day, until);
  }

  /** Somebody says that a record's number is mistaken. */
  boolean mistaken(RunResult run, CaseKey key, String record, String day) {
    Settlement says = made(run, key, Answer.MISTAKEN_NUMBER, Optional.empty(), Optional.of(record));
    return write(key, says, day, Optional.empty());
  }

  public boolean takeBack(CaseKey key, String day) {
    return write(key, new Settlement.TakenBack(), day, Optional.empty());
  }

  Settlement made(
      RunResult run,
      CaseKey key,
      Answer answer,
      Optional<OrganisationId> registry,
      Optional<String> record) {
    return new SettlementMaker(run, log.snapshot(), World.DIRECTORY, world.people(), World.PERIODS)
        .make(key, answer, registry, record);
  }

  /** The coordinator puts it off: it comes up again on a day. */
  public boolean snooze(CaseKey key, String day, String until) {
    String last = LocalDate.parse(until).minusDays(1).toString();
    return write(key, new Settlement.ForLater(), day, Optional.of(last));
  }

  /** A sheet with these answers comes back. */
  public Months answered(Answered... answers) {
    Answering.sheet(List.of(answers), ids.incrementAndGet(), log);
    return this;
  }

  private boolean write(CaseKey key, Settlement says, String day, Optional<String> until) {
    LocalDate found = LocalDate.parse(day);
    return new SettlementLog(
            log, clock(found), () -> new ImportId(new UUID(2, ids.incrementAndGet())))
        .write(
            new SettlementLog.Word(
                key, says, found, until.map(LocalDate::parse), "front desk", "asked them"));
  }

  private static Clock clock(LocalDate day) {
    return Clock.fixed(day.atStartOfDay().toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
  }
}
