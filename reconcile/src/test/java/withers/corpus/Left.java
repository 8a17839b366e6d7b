package withers.corpus;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What two records leave to go by.
 *
 * @param stated what both records state
 * @param shared what is truly in both of them, however it is written
 */
public record Left(Set<Piece> stated, Set<Piece> shared) {

  /**
   * A piece of a record. An initial is shared when one record has no more than that, and it fits.
   */
  public enum Piece {
    GIVEN_NAME,
    INITIAL,
    FAMILY_NAME,
    PHONE,
    EMAIL,
    ADDRESS
  }

  private static final Set<Piece> DETAILS = EnumSet.of(Piece.PHONE, Piece.EMAIL, Piece.ADDRESS);
  private static final Set<Piece> NAMES = EnumSet.of(Piece.GIVEN_NAME, Piece.FAMILY_NAME);

  static Left of(Entry one, Entry other) {
    Set<Piece> stated = stated(one);
    stated.retainAll(stated(other));
    return new Left(stated, shared(one, other));
  }

  private static Set<Piece> stated(Entry entry) {
    Set<Piece> stated = EnumSet.noneOf(Piece.class);
    add(stated, Piece.GIVEN_NAME, !entry.names().given().isEmpty());
    add(stated, Piece.FAMILY_NAME, !entry.names().family().isEmpty());
    add(stated, Piece.PHONE, !entry.phones().isEmpty());
    add(stated, Piece.EMAIL, !entry.emails().isEmpty());
    add(stated, Piece.ADDRESS, entry.address().filter(a -> !a.building().isEmpty()).isPresent());
    return stated;
  }

  private static Set<Piece> shared(Entry one, Entry other) {
    Set<Piece> shared = EnumSet.noneOf(Piece.class);
    givenShared(one.names(), other.names()).ifPresent(shared::add);
    add(shared, Piece.FAMILY_NAME, meet(families(one), families(other)));
    add(shared, Piece.PHONE, meet(phones(one), phones(other)));
    add(shared, Piece.EMAIL, meet(emails(one), emails(other)));
    add(shared, Piece.ADDRESS, one.address().filter(a -> meets(a, other)).isPresent());
    return shared;
  }

  private static void add(Set<Piece> pieces, Piece piece, boolean holds) {
    if (holds) {
      pieces.add(piece);
    }
  }

  private static Optional<Piece> givenShared(Names one, Names other) {
    if (one.given().isEmpty() || other.given().isEmpty()) {
      return Optional.empty();
    }
    Names.Written first = one.given().get(0);
    Names.Written second = other.given().get(0);
    if (first.whole() && second.whole()) {
      return Optional.of(Piece.GIVEN_NAME).filter(p -> first.name().equals(second.name()));
    }
    boolean fits = first.text().codePointAt(0) == second.text().codePointAt(0);
    return Optional.of(Piece.INITIAL).filter(p -> fits);
  }

  private static boolean meets(WrittenAddress address, Entry other) {
    return other.address().filter(address::meets).isPresent();
  }

  private static boolean meet(Stream<String> one, Stream<String> other) {
    return !Collections.disjoint(one.toList(), other.toList());
  }

  private static Stream<String> families(Entry entry) {
    return entry.names().family().stream().map(name -> name.name().key());
  }

  private static Stream<String> phones(Entry entry) {
    return entry.phones().stream().map(phone -> phone.phone().key());
  }

  private static Stream<String> emails(Entry entry) {
    return entry.emails().stream().map(Entry.WrittenEmail::address);
  }

  /** Whether a phone, an e-mail address or an address is in both. */
  public boolean isDetailShared() {
    return !Collections.disjoint(shared, DETAILS);
  }

  /** The details that both state, names left aside. */
  public List<Piece> details() {
    return stated.stream().filter(DETAILS::contains).toList();
  }

  public boolean isNameStated() {
    return !Collections.disjoint(stated, NAMES);
  }

  /** How far a sensible person could tell, knowing the truth's shape but not the truth. */
  public Reach reach(Truth truth) {
    boolean fullName = shared.containsAll(NAMES);
    if (fullName && !isDetailShared()) {
      return Reach.NAME_ALONE;
    }
    boolean looksLikeOne = fullName || isDetailShared() && speaksForOne(truth);
    return looksLikeOne == (truth == Truth.SAME_PERSON) ? Reach.CLEAR : Reach.UNDECIDABLE;
  }

  /**
   * A given name with the same details; for others than the same person, the family name as well.
   */
  private boolean speaksForOne(Truth truth) {
    boolean family = truth == Truth.SAME_PERSON || shared.contains(Piece.FAMILY_NAME);
    boolean given = shared.contains(Piece.GIVEN_NAME) || shared.contains(Piece.INITIAL);
    boolean own = shared.contains(Piece.PHONE) || shared.contains(Piece.EMAIL);
    return isNameStated() ? given && family : own;
  }
}
