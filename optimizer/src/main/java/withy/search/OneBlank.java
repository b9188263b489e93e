package withy.search;

import java.util.BitSet;
import withy.catalog.ReelSeat;
import withy.rod.BlankShape;
import withy.rod.Station;

/**
 * One blank to put the parts of a shelf on.
 *
 * @param shelf the shelf
 * @param shape the blank
 */
record OneBlank(Shelf shelf, BlankShape shape) implements Underlying {
    @Override
    public double thickest(double fromMm, double toMm) {
        return shape.profile().largestBetween(fromMm, toMm);
    }

    @Override
    public double thinnest(double atMm) {
        return shape.profile().at(atMm);
    }

    @Override
    public long style(ReelSeat seat) {
        return shelf.ground.style.part(shape.blank(), shelf.form, Station.SEAT, seat, 1);
    }

    @Override
    public BitSet caps() {
        return shelf.capsOn(shape);
    }

    @Override
    public boolean goes(Station station, int check) {
        return shelf.checkPlaces.goes(station, check, shape);
    }

    @Override
    public GripMasses rears() {
        return shelf.rearMasses(shape);
    }

    @Override
    public GripMasses butts() {
        return shelf.buttMasses(shape);
    }

    @Override
    public GripMasses fores() {
        return shelf.foreMasses(shape);
    }
}
