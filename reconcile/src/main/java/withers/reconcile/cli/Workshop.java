package withers.reconcile.cli;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withers.codec.Streams;
import withers.history.Periods;
import withers.kafka.KafkaCluster;
import withers.log.EventLog;
import withers.run.PartOrder;
import withers.run.PartWork;
import withers.waiting.Waiting;
import withers.work.Task;
import withers.work.kafka.KafkaWorkplace;
import withers.workspace.Workspace;

/**
 * The workers of one process. What all partitions of a run need is read once, and kept until the
 * next run.
 */
final class Workshop {
  private static final Duration POLL = Duration.ofMillis(500);
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final long CLOSING_SECONDS = 8;
  private static final Waiting WAITING = new Waiting("A worker was interrupted", "A worker failed");

  private final Workspace workspace;
  private final EventLog log;
  private final Consumer<String> notes;
  private final String rules;
  private final Set<String> awaited = ConcurrentHashMap.newKeySet();
  private final Set<String> over = ConcurrentHashMap.newKeySet();
  private final CountDownLatch ended = new CountDownLatch(1);
  private volatile boolean closing;
  private volatile boolean refused;
  private @Nullable Begun begun;

  /** A run that is under way. */
  private record Begun(String run, PartWork work) {}

  Workshop(Workspace workspace, EventLog log, Consumer<String> notes) {
    this.workspace = workspace;
    this.log = log;
    this.notes = notes;
    this.rules = RulesStamp.of(workspace);
  }

  /** Works until it is closed, refuses, or was idle for so long; 0 for any time. */
  void open(KafkaCluster cluster, int threads, int idleSeconds) {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<?>> workers = new ArrayList<>();
      for (int number = 1; number <= threads; number++) {
        String name = "%s/%d/%d".formatted(host(), ProcessHandle.current().pid(), number);
        workers.add(pool.submit(() -> serve(cluster, name, idleSeconds)));
      }
      workers.forEach(WAITING::on);
    } finally {
      closing = true;
      pool.shutdown();
      ended.countDown();
    }
  }

  private static String host() {
    try {
      return InetAddress.getLocalHost().getHostName();
    } catch (UnknownHostException nameless) {
      return "worker";
    }
  }

  private void serve(KafkaCluster cluster, String name, int idleSeconds) {
    try (KafkaWorkplace place =
        KafkaWorkplace.open(
            cluster,
            new KafkaWorkplace.Worker(
                name, UUID.randomUUID(), Streams.CHIPS.partitions(), PATIENCE))) {
      long busy = System.nanoTime();
      while (!closing && !isIdle(busy, idleSeconds)) {
        Optional<Task> task = place.next(POLL);
        if (task.isPresent()) {
          work(task.get());
          busy = System.nanoTime();
        }
      }
    } finally {
      closing = true;
    }
  }

  private static boolean isIdle(long since, int seconds) {
    return seconds > 0 && System.nanoTime() - since > TimeUnit.SECONDS.toNanos(seconds);
  }

  private void work(Task task) {
    if (!isAwaited(task)) {
      task.drop();
    } else if (task.rules().equals(rules)) {
      judge(task);
    } else {
      refuse(task);
    }
  }

  /** Asks once; after that, a run is over when it leaves a question without an answer. */
  private boolean isAwaited(Task task) {
    String run = task.run();
    if (!awaited.contains(run) && !over.contains(run)) {
      (task.isAwaited() ? awaited : over).add(run);
    }
    return !over.contains(run);
  }

  private void judge(Task task) {
    try {
      task.deliver(begun(task).judge(task.part(), question -> asked(task, question)));
    } catch (NobodyAnswers gone) {
      over.add(task.run());
      notes.accept("Run %s doesn't answer any more: its work is dropped".formatted(task.run()));
      task.drop();
    }
  }

  private static byte[] asked(Task task, byte[] question) {
    return task.ask(question).orElseThrow(NobodyAnswers::new);
  }

  private synchronized PartWork begun(Task task) {
    Begun current = begun;
    if (current == null || !current.run.equals(task.run())) {
      current =
          new Begun(
              task.run(),
              new PartWork(
                  log.snapshot(),
                  PartOrder.read(task.order()),
                  workspace.directory(),
                  Periods.of(workspace.settings(), workspace.directory())));
      begun = current;
    }
    return current.work;
  }

  private void refuse(Task task) {
    refused = true;
    closing = true;
    task.refuse();
    notes.accept(
        "Expected work for the rules and configuration that are here, but run %s has others; use the same Withers, and copy organisations.yaml and the periods in withers.yaml from where it was ordered"
            .formatted(task.run()));
  }

  boolean isRefused() {
    return refused;
  }

  /** Ends after the partitions that are being judged, so that nobody has to wait for the dead. */
  void close() {
    closing = true;
    try {
      ended.await(CLOSING_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** The run that ordered the work is gone. */
  private static final class NobodyAnswers extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NobodyAnswers() {
      super(null, null, false, false);
    }
  }
}
