"""What an owner does with the hands, and the answers to what the window asks."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from planner.model.source import Confirmation


class Answers:
    def __init__(self):
        self.parent = None
        self.troubles, self.conflicts = [], []
        self.paper = self.export_to = self.parcel = None
        self.arrived, self.about_arrivals = (), {}
        self.why = "the maker wrote that it was wrong"
        self.who = self.how = ""
        self.leave = self.over = False

    def paper_to_keep(self):
        return self.paper

    def picture_to_trace(self):
        return self.paper

    def trouble(self, headline, problems):
        self.troubles.append((headline, problems))

    def leave_draft(self):
        return self.leave

    def conflict(self, conflict):
        self.conflicts.append(conflict)
        return self.over

    def confirmation(self, record, proposed):
        who, date, how = proposed
        return Confirmation(who=self.who or who, date=date, how=self.how or how)

    def reason(self, headline, first=""):
        return self.why

    def where_to_export(self, name):
        return self.export_to

    def parcel_to_take_in(self):
        return self.parcel

    def arrivals(self, found):
        self.arrived = found
        return self.about_arrivals


def typed(field, text, key=Qt.Key.Key_Return):
    field.line.setFocus()
    field.line.selectAll()
    QTest.keyClicks(field.line, text)
    QTest.keyClick(field.line, key)


def choose(choice, value):
    choice.box.setCurrentIndex(choice.box.findData(value))
    choice.box.activated.emit(choice.box.currentIndex())
