package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import withers.ingest.profile.PartyName;

/**
 * Looks for the assignment that fits best as a whole: it starts with the best of each column for
 * itself and then moves, swaps and drops columns as long as the whole gains.
 */
final class Search {

  /** An assignment and how well it fits, in bits. */
  record Found(List<Candidate> chosen, double total) {
    Found {
      chosen = List.copyOf(chosen);
    }

    /** The column of a field, if it has one. */
    Optional<Candidate> of(Field field) {
      return chosen.stream().filter(c -> c.field().equals(field)).findFirst();
    }

    /** What a column is, if anything. */
    Optional<Candidate> of(Column column) {
      return chosen.stream().filter(c -> c.column() == column).findFirst();
    }
  }

  private static final double LEAST_GAIN = 1e-9;
  private static final int MOST_ROUNDS = 60;

  private final Board board;

  Search(Board board) {
    this.board = board;
  }

  /** The best assignment that is found. */
  Found best() {
    return improved(board.bestOneByOne(any -> true), any -> true);
  }

  /** The best assignment that is found without this candidate. */
  Found without(Candidate forbidden, Found best) {
    Predicate<Candidate> allowed = candidate -> !candidate.saysTheSameAs(forbidden);
    Found near = improved(without(best.chosen(), forbidden), allowed);
    Found far = improved(board.bestOneByOne(allowed), allowed);
    return near.total() >= far.total() ? near : far;
  }

  private Found improved(List<Candidate> start, Predicate<Candidate> allowed) {
    Found found = new Found(start, board.total(start));
    for (int round = 0; round < MOST_ROUNDS; round++) {
      Found better = bestMove(found, allowed);
      if (better.total() <= found.total() + LEAST_GAIN) {
        return found;
      }
      found = better;
    }
    return found;
  }

  private Found bestMove(Found from, Predicate<Candidate> allowed) {
    Found best = from;
    for (Candidate dropped : from.chosen()) {
      best = better(best, without(from.chosen(), dropped));
    }
    for (Candidate candidate : board.candidates()) {
      if (allowed.test(candidate) && !from.chosen().contains(candidate)) {
        best = afterTaking(candidate, from, best, allowed);
      }
    }
    return afterMovingPeople(from, best, allowed);
  }

  /**
   * What belongs to one person can only be told together: it moves as a whole, with names or not.
   */
  private Found afterMovingPeople(Found from, Found best, Predicate<Candidate> allowed) {
    Found better = best;
    Set<PartyName> parties = EnumSet.noneOf(PartyName.class);
    board.candidates().forEach(c -> c.field().party().ifPresent(parties::add));
    for (PartyName one : parties) {
      for (PartyName two : parties) {
        if (one != two) {
          better = better(better, moved(from, one, two, use -> true, allowed));
          better = better(better, moved(from, one, two, use -> !use.isName(), allowed));
          better = better(better, moved(from, one, two, Use::isName, allowed));
        }
      }
    }
    return better;
  }

  /** Gives one what the other has, and the other way about, where that can be. */
  private List<Candidate> moved(
      Found from,
      PartyName one,
      PartyName two,
      Predicate<Use> which,
      Predicate<Candidate> allowed) {
    List<Candidate> chosen = new ArrayList<>();
    for (Candidate candidate : from.chosen()) {
      Field field = candidate.field();
      boolean moves = which.test(field.use()) && (field.isOf(one) || field.isOf(two));
      if (moves) {
        Field to = Field.of(field.isOf(one) ? two : one, field.use(), field.copy());
        board.find(to, candidate.column()).filter(allowed).ifPresent(chosen::add);
      } else {
        chosen.add(candidate);
      }
    }
    return chosen;
  }

  private Found afterTaking(Candidate taken, Found from, Found best, Predicate<Candidate> allowed) {
    Optional<Candidate> oldField = from.of(taken.column());
    Optional<Candidate> oldColumn = from.of(taken.field());
    List<Candidate> chosen = new ArrayList<>(from.chosen());
    oldField.ifPresent(chosen::remove);
    oldColumn.ifPresent(chosen::remove);
    chosen.add(taken);
    Found better = better(best, chosen);
    if (oldColumn.isEmpty()) {
      return better;
    }
    for (Candidate other : board.candidates()) {
      boolean isFree =
          allowed.test(other)
              && other.column() == oldColumn.get().column()
              && chosen.stream().noneMatch(c -> c.field().equals(other.field()));
      if (isFree) {
        List<Candidate> swapped = new ArrayList<>(chosen);
        swapped.add(other);
        better = better(better, swapped);
      }
    }
    return better;
  }

  private Found better(Found best, List<Candidate> chosen) {
    double total = board.total(chosen);
    return total > best.total() ? new Found(chosen, total) : best;
  }

  private static List<Candidate> without(List<Candidate> chosen, Candidate dropped) {
    List<Candidate> rest = new ArrayList<>(chosen);
    rest.remove(dropped);
    return rest;
  }
}
