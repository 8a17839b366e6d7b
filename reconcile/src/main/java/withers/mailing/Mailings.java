package withers.mailing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.codec.Streams;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.OrganisationId;
import withers.log.LogSnapshot;

/** The stream of deliveries, folded: what became of each list that was to be sent. Immutable. */
public final class Mailings {

  /** Nothing was ever sent. */
  public static final Mailings NONE = of(List.of());

  private record Key(OrganisationId recipient, String run) {}

  /**
   * A list on its way.
   *
   * @param pending the step that it was handed over with
   * @param last the newest step
   */
  private record Course(Delivery pending, Delivery last) {
    boolean isSent() {
      return Fate.after(last.step()) == Fate.SENT;
    }
  }

  private final Map<Key, Course> courses;

  private Mailings(Map<Key, Course> courses) {
    this.courses = courses;
  }

  /** Reads the stream. */
  public static Mailings read(LogSnapshot log) {
    List<Delivery> steps = new ArrayList<>();
    log.<Delivery>replay(Streams.DELIVERIES, 0, (step, marker) -> steps.add(step));
    return of(steps);
  }

  /** Folds steps, in the order in which they were written. */
  public static Mailings of(Collection<Delivery> steps) {
    Map<Key, Course> courses = new LinkedHashMap<>();
    for (Delivery step : steps) {
      courses.merge(
          new Key(step.recipient(), step.run()),
          new Course(step, step),
          (before, next) ->
              new Course(step.step() == Step.PENDING ? step : before.pending, next.last));
    }
    return new Mailings(courses);
  }

  /** What became of a run's list for a recipient. */
  public Fate fate(String run, OrganisationId recipient) {
    return Optional.ofNullable(courses.get(new Key(recipient, run)))
        .map(course -> Fate.after(course.last.step()))
        .orElse(Fate.UNSENT);
  }

  /** The newest step of each list that was to be sent, in the order of the first attempts. */
  public List<Delivery> all() {
    return courses.values().stream().map(Course::last).toList();
  }

  /** Lists that were handed over without an answer being written: the program was ended. */
  public List<Delivery> unanswered() {
    return all().stream().filter(last -> last.step() == Step.PENDING).toList();
  }

  /** Lists of which nobody knows whether they arrived. */
  public List<Delivery> unsure() {
    return all().stream().filter(last -> Fate.after(last.step()) == Fate.UNSURE).toList();
  }

  /** The days of the mails that came through and told an organisation of a follow-up, in order. */
  public List<LocalDate> daysOf(OrganisationId recipient, String reference) {
    return courses.values().stream()
        .filter(course -> course.isSent() && course.pending.recipient().equals(recipient))
        .map(Course::pending)
        .filter(pending -> pending.told().contains(reference))
        .map(Delivery::on)
        .sorted()
        .toList();
  }

  /**
   * In how many mails before the one of this run an organisation was told of each follow-up, by
   * reference: those that came through, as for {@link #lastBefore}.
   */
  public Map<String, Integer> timesTold(String run, LocalDate asOf, OrganisationId recipient) {
    Map<String, Integer> times = new HashMap<>();
    for (Course course : courses.values()) {
      Delivery pending = course.pending;
      if (pending.recipient().equals(recipient) && pending.run().equals(run)) {
        return times;
      }
      if (pending.recipient().equals(recipient)
          && course.isSent()
          && !pending.asOf().isAfter(asOf)) {
        pending.told().forEach(reference -> times.merge(reference, 1, Integer::sum));
      }
    }
    return times;
  }

  /**
   * The last mail that came through to an organisation before the one of this run: what its list of
   * this run is compared with, however often that list is made.
   *
   * @param asOf the day that the run judged; mails of later days play no part
   */
  public Optional<LastMail> lastBefore(String run, LocalDate asOf, OrganisationId recipient) {
    Optional<LastMail> last = Optional.empty();
    for (Course course : courses.values()) {
      Delivery pending = course.pending;
      if (!pending.recipient().equals(recipient)) {
        continue;
      }
      if (pending.run().equals(run)) {
        return last;
      }
      if (course.isSent() && !pending.asOf().isAfter(asOf)) {
        last = Optional.of(new LastMail(pending.on(), Set.copyOf(pending.told())));
      }
    }
    return last;
  }
}
