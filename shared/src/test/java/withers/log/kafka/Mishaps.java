package withers.log.kafka;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import withers.kafka.ThreeBrokers;

/** Kills brokers and the client while it imports, when and which as the seed has it. */
final class Mishaps {

  /** As many as there are; then the client may come to its end. */
  private static final int MOST = 5;

  /** A client says some 50 lines if nobody disturbs it: about so many are left between mishaps. */
  private static final int QUIET_LINES = 7;

  private static final int LONGEST_WAIT_MILLIS = 60;
  private static final int LONGEST_OUTAGE_MILLIS = 3_000;

  private final Random random;
  private final long seed;
  private final ThreeBrokers brokers;
  private final String prefix;
  private final List<Integer> committed = new ArrayList<>();
  private ImportingClient client;

  Mishaps(long seed, ThreeBrokers brokers, String prefix) throws IOException {
    this.seed = seed;
    this.random = new Random(seed);
    this.brokers = brokers;
    this.prefix = prefix;
    this.client = ImportingClient.start(brokers.addresses(), prefix, seed);
  }

  /** The imports that the client said were committed, in this order. */
  List<Integer> committed() {
    return List.copyOf(committed);
  }

  void untilDone() throws IOException, InterruptedException {
    try {
      boolean goesOn = listen(1 + random.nextInt(QUIET_LINES));
      for (int i = 0; i < MOST && goesOn; i++) {
        pause(LONGEST_WAIT_MILLIS);
        happen();
        goesOn = listen(1 + random.nextInt(QUIET_LINES));
      }
      brokers.awaitReady();
      while (goesOn) { // undisturbed from here on
        goesOn = listen(1);
      }
    } finally {
      client.close();
    }
  }

  /** Lets the client say so many lines; false when it is done. */
  private boolean listen(int lines) throws IOException {
    for (int i = 0; i < lines; i++) {
      String line = client.says();
      if (line.startsWith(ImportingClient.COMMITTED)) {
        committed.add(Integer.parseInt(line.substring(ImportingClient.COMMITTED.length())));
      } else if (line.equals(ImportingClient.DONE)) {
        return false;
      }
    }
    return true;
  }

  private void happen() throws IOException, InterruptedException {
    int which = random.nextInt(ThreeBrokers.COUNT);
    switch (random.nextInt(5)) {
      case 0, 1 -> brokers.kill(which);
      case 2 -> killOthers(which);
      case 3 -> killClient();
      default -> {
        brokers.kill(which);
        killClient();
      }
    }
    pause(LONGEST_OUTAGE_MILLIS);
    brokers.launchMissing();
  }

  private void killOthers(int left) {
    for (int broker = 0; broker < ThreeBrokers.COUNT; broker++) {
      if (broker != left) {
        brokers.kill(broker);
      }
    }
  }

  private void killClient() throws IOException {
    client.close();
    client = ImportingClient.start(brokers.addresses(), prefix, seed);
  }

  private void pause(int longestMillis) throws InterruptedException {
    TimeUnit.MILLISECONDS.sleep(random.nextInt(longestMillis));
  }
}
