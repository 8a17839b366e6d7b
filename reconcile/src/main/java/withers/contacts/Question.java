package withers.contacts;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import withers.codec.ByteReader;
import withers.codec.Bytes;
import withers.contact.ContactRef;

/** What is asked of a vault from afar: what contacts are, and how some of them compare. */
public final class Question {
  private final List<ContactRef> references;
  private final List<Pair> pairs;

  private Question(Collection<ContactRef> references, Collection<Pair> pairs) {
    this.references = List.copyOf(references);
    this.pairs = List.copyOf(pairs);
  }

  /** The contacts asked about, in their order, each once. */
  List<ContactRef> references() {
    return references;
  }

  List<Pair> pairs() {
    return pairs;
  }

  /** Puts a question together. */
  public static final class Builder {
    private final Set<ContactRef> references = new TreeSet<>();
    private final Set<Pair> pairs = new LinkedHashSet<>();

    /** Asks what these are, and how each compares with each. */
    public Builder compare(Collection<ContactRef> some) {
      List<ContactRef> all = some.stream().distinct().toList();
      references.addAll(all);
      for (int i = 0; i < all.size(); i++) {
        for (ContactRef other : all.subList(i + 1, all.size())) {
          pairs.add(Pair.of(all.get(i), other));
        }
      }
      return this;
    }

    /** Asks what these are. */
    public Builder ask(Collection<ContactRef> some) {
      references.addAll(some);
      return this;
    }

    public Question build() {
      return new Question(references, pairs);
    }
  }

  /** As bytes: the references, then for each pair their places among them. */
  public byte[] bytes() {
    Bytes out = new Bytes();
    out.unsigned(references.size());
    references.forEach(out::reference);
    Map<ContactRef, Integer> places = new HashMap<>();
    references.forEach(reference -> places.put(reference, places.size()));
    out.unsigned(pairs.size());
    for (Pair pair : pairs) {
      out.unsigned(Objects.requireNonNull(places.get(pair.one())));
      out.unsigned(Objects.requireNonNull(places.get(pair.other())));
    }
    return out.toArray();
  }

  /**
   * Reads what {@link #bytes} wrote.
   *
   * @throws withers.log.LogDamagedException when it is anything else
   */
  public static Question read(byte[] bytes) {
    ByteReader in = new ByteReader(bytes);
    List<ContactRef> references = new ArrayList<>();
    for (int left = in.length("references"); left > 0; left--) {
      references.add(in.reference());
    }
    List<Pair> pairs = new ArrayList<>();
    for (int left = in.length("pairs"); left > 0; left--) {
      pairs.add(Pair.of(reference(in, references), reference(in, references)));
    }
    if (!in.atEnd()) {
      throw in.damaged("bytes left over");
    }
    return new Question(references, pairs);
  }

  private static ContactRef reference(ByteReader in, List<ContactRef> references) {
    long place = in.unsigned();
    if (place < 0 || place >= references.size()) {
      throw in.damaged("a place without a reference");
    }
    return references.get((int) place);
  }
}
