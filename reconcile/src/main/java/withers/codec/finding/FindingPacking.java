package withers.codec.finding;

import withers.finding.Finding;
import withers.packed.Packer;
import withers.packed.Packing;
import withers.packed.Unpacker;

/** A finding in a fraction of the room: whoever makes lists looks at each only now and then. */
final class FindingPacking implements Packing<Finding> {

  @Override
  public void pack(Finding value, Packer out) {
    new FindingPacker(out).finding(value);
  }

  @Override
  public Finding unpack(Unpacker in) {
    return new FindingUnpacker(in).finding();
  }
}
