package withers.report.send;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.OrganisationId;
import withers.point.Point;
import withers.point.Points;

/**
 * Sends mails in rounds: what the server can't take now has another turn after a wait, which all
 * that wait share. What it refuses, and what nobody can be sure of, has none. Before a mail is
 * handed over that is written down, and what came of it right after.
 */
public final class Sender {

  /**
   * Before each round. Whatever the number of recipients, six minutes are waited at most: long
   * enough for servers that turn unknown senders away at first (common practice, no source).
   */
  static final List<Duration> WAITS =
      List.of(Duration.ZERO, Duration.ofMinutes(1), Duration.ofMinutes(5));

  /**
   * So many connections that ended one after another without an answer are the server's trouble,
   * not a mail's: to go on would leave one unsure mail after another.
   */
  static final int LOST = 2;

  private final Carrier carrier;
  private final DeliveryBook book;
  private final Pause pause;
  private final Points points;
  private final Map<OrganisationId, Delivery> steps = new LinkedHashMap<>();
  private Optional<NoConnectionException> trouble = Optional.empty();

  /** Sends what a carrier takes over. */
  public Sender(Carrier carrier, DeliveryBook book, Pause pause) {
    this(carrier, book, pause, Points.NONE);
  }

  /**
   * Sends what a carrier takes over.
   *
   * @param points told of each point of a mail
   */
  public Sender(Carrier carrier, DeliveryBook book, Pause pause, Points points) {
    this.points = points;
    this.carrier = carrier;
    this.book = book;
    this.pause = pause;
  }

  /** Sends mails that are due. One sender sends once. */
  public Sent send(List<Planned> due) {
    List<Planned> left = due;
    for (Duration wait : WAITS) {
      if (!left.isEmpty() && mayGoOn()) {
        pause.of(wait);
        left = round(left);
      }
    }
    List<OrganisationId> untried =
        left.stream().map(Planned::recipient).filter(id -> !steps.containsKey(id)).toList();
    return new Sent(
        List.copyOf(steps.values()), untried, trouble.map(NoConnectionException::getMessage));
  }

  private boolean mayGoOn() {
    return trouble.map(NoConnectionException::mayPass).orElse(true);
  }

  /** Gives each its turn, and returns those that are left. */
  private List<Planned> round(List<Planned> mails) {
    List<Planned> left = new ArrayList<>();
    int lost = 0;
    for (int i = 0; i < mails.size(); i++) {
      if (lost == LOST || !isConnected()) {
        left.addAll(mails.subList(i, mails.size()));
        return left;
      }
      Answer answer = handOver(mails.get(i));
      lost = answer.isLost() ? lost + 1 : 0;
      if (answer.step() == Step.POSTPONED) {
        left.add(mails.get(i));
      }
    }
    return left;
  }

  private boolean isConnected() {
    try {
      carrier.connect();
      trouble = Optional.empty();
    } catch (NoConnectionException none) {
      trouble = Optional.of(none);
    }
    return trouble.isEmpty();
  }

  private Answer handOver(Planned planned) {
    Delivery pending = planned.pending(book.today());
    book.write(pending);
    points.reached(Point.SEND_PENDING);
    Answer answer = carrier.handOver(planned.mail());
    points.reached(Point.SEND_ANSWERED);
    Delivery after = pending.then(answer.step(), book.today(), answer.words());
    book.write(after);
    points.reached(Point.SEND_RECORDED);
    steps.put(planned.recipient(), after);
    return answer;
  }
}
