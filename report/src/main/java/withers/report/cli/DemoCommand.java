package withers.report.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.log.EventLog;
import withers.report.demo.BrokerJars;
import withers.report.demo.DemoBroker;
import withers.report.demo.DemoFixtures;
import withers.report.demo.DemoFolder;
import withers.report.demo.Home;
import withers.report.demo.Round;
import withers.source.InputRefusedException;
import withers.workspace.Workspace;

/** Plays two months of an invented network. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = {
      "Plays two months of an invented rescue network, and tells where the lists are.",
      "Everything in it is made up; its numbers are under the test code that no real animal carries."
    },
    footerHeading = "%nExample:%n",
    footer = {
      "  withers demo --workspace my-demo",
      "  withers demo --log kafka",
      "  withers demo --log kafka --bootstrap localhost:9092"
    })
public final class DemoCommand implements Callable<Integer> {
  private static final String DEFAULT_FOLDER = "withers-demo";

  private final Console console;
  private final Clock clock;
  private final Home home;

  @Option(
      names = {"-w", "--workspace"},
      paramLabel = "DIR",
      description = {
        "A new or empty folder, or one that an earlier demo made: that is emptied first.",
        "Default: " + DEFAULT_FOLDER + " in the folder for temporary files."
      })
  private @Nullable Path folder;

  @Mixin private DemoLog log;

  DemoCommand(Console console, Clock clock, Home home) {
    this.console = console;
    this.clock = clock;
    this.home = home;
  }

  @Override
  public Integer call() {
    log.check();
    DemoFixtures fixtures = DemoFixtures.of(home);
    Optional<String> jars = log.wantsBroker() ? Optional.of(BrokerJars.of(home)) : Optional.empty();
    DemoFolder demo =
        DemoFolder.fresh(
            Optional.ofNullable(folder).orElseGet(DemoCommand::defaultFolder),
            fixtures.workspace());
    if (jars.isPresent()) {
      playOnOwnBroker(fixtures, demo, jars.get());
    } else {
      log.onKafka(clock, Optional.empty()).ifPresent(demo::keepLogOn);
      playAll(fixtures, demo).ifPresent(done -> text(demo).tellWhereToLook(done));
    }
    return ExitCode.DONE.number();
  }

  private void playOnOwnBroker(DemoFixtures fixtures, DemoFolder demo, String jars) {
    console.say("Starting a Kafka broker for the demo ...");
    try (DemoBroker broker = DemoBroker.start(jars, demo.path().resolve("broker"))) {
      log.onKafka(clock, Optional.of(broker.address())).ifPresent(demo::keepLogOn);
      playAll(fixtures, demo).ifPresent(done -> text(demo).tellWhatStays(done));
    }
  }

  private Optional<MonthlyRun.Done> playAll(DemoFixtures fixtures, DemoFolder demo) {
    requireEmptyLog(Workspace.open(demo.path(), clock));
    Optional<MonthlyRun.Done> last = Optional.empty();
    for (Round round : fixtures.rounds()) {
      demo.receive(fixtures.exports(round));
      last = Optional.of(play(round, demo));
    }
    return last;
  }

  private static void requireEmptyLog(Workspace workspace) {
    Optional<EventLog> filled = workspace.openFilledLog();
    if (filled.isPresent()) {
      filled.get().close();
      throw new InputRefusedException(
          "Expected topics that are new, but found imports on those of the prefix %s: leave out --topic-prefix, or name another"
              .formatted(workspace.settings().kafka().orElseThrow().topicPrefix()));
    }
  }

  private MonthlyRun.Done play(Round round, DemoFolder demo) {
    DemoText text = text(demo);
    MonthlyRun.Done done =
        new MonthlyRun(text.workspace(), console, Optional.empty()).run("demo", round.asOf());
    text.tell(round, done);
    return done;
  }

  private DemoText text(DemoFolder demo) {
    return new DemoText(console, Workspace.open(demo.path(), clock), home.quotedCommand());
  }

  private static Path defaultFolder() {
    return Path.of(System.getProperty("java.io.tmpdir"), DEFAULT_FOLDER);
  }
}
