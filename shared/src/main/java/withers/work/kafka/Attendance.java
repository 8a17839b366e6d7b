package withers.work.kafka;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import withers.work.Crew.Share;

/** Who works, who left, and how long nobody has said a word. For one thread. */
final class Attendance {

  /** Twice what it takes until the parts of one who died are another's, and that one's first. */
  private static final Duration SILENCE = Duration.ofSeconds(60);

  /** When all who came have refused, others who are there would have spoken by then. */
  private static final Duration REFUSED = Duration.ofSeconds(5);

  private final Duration patience;
  private final Map<String, Share> shares = new TreeMap<>();
  private final Set<String> working = new HashSet<>();
  private final Set<String> refusing = new TreeSet<>();
  private boolean anybody;
  private long heard = System.nanoTime();

  /**
   * @param patience how long to wait for the first word of a worker
   */
  Attendance(Duration patience) {
    this.patience = patience;
  }

  void heard(String worker) {
    anybody = true;
    working.add(worker);
    goesOn();
  }

  /** Something was done, if only here: silence begins anew. */
  void goesOn() {
    heard = System.nanoTime();
  }

  void delivered(Share share) {
    shares.merge(share.worker(), share, Share::plus);
  }

  void refused(String worker) {
    refusing.add(worker);
    working.removeAll(refusing);
  }

  /** Whether nobody has been heard of for so long that nobody will. */
  boolean isSilent() {
    Duration longest = working.isEmpty() ? (anybody ? REFUSED : patience) : SILENCE;
    return System.nanoTime() - heard > longest.toNanos();
  }

  List<Share> shares() {
    return List.copyOf(shares.values());
  }

  List<String> notes() {
    List<String> notes = new ArrayList<>();
    if (!anybody) {
      notes.add(
          "No worker was heard of within %d s: the run was done here alone. Start some with \"withers work\""
              .formatted(patience.toSeconds()));
    }
    refusing.forEach(
        worker ->
            notes.add(
                "The worker %s has other rules or another configuration, and left: give it this Withers, and this workspace's organisations.yaml and withers.yaml"
                    .formatted(worker)));
    return notes;
  }
}
