# What is given away: the tarball of the sources and the Debian package, each the same bytes
# whenever and wherever it is made. Included by the makefile.

# For "make deps": what makes and compares packages, and the shells whose completions are tried.
PACKAGES += dpkg-dev faketime bash zsh fish

# Seconds since 1970: of the last commit, or of the tarball that was unpacked.
ifndef SOURCE_DATE_EPOCH
SOURCE_DATE_EPOCH := $(if $(wildcard .git),$(shell git log -1 --format=%ct),$(shell stat -c %Y VERSION))
endif
export SOURCE_DATE_EPOCH

DIST    := jarwright-$(VERSION)
TARBALL := $(BUILD)/$(DIST).tar.gz

# A checkout gives what git knows, an unpacked tarball all that it has but the builds.
dist:
	@mkdir -p $(BUILD)
	{ if [ -e .git ]; then git ls-files -z; \
	  else find . \( -path './build' -o -path './build-*' \) -prune -o -type f -printf '%P\0'; \
	  fi; } | LC_ALL=C sort -z > $(BUILD)/dist-files
	tar --create --null --no-recursion --files-from=$(BUILD)/dist-files --transform='s,^,$(DIST)/,' \
		--format=ustar --owner=0 --group=0 --numeric-owner --mode='u=rwX,go=rX' \
		--mtime=@$(SOURCE_DATE_EPOCH) --file=$(BUILD)/$(DIST).tar
	gzip -9nf $(BUILD)/$(DIST).tar
	@echo $(TARBALL)

# The tarball by itself: it builds, passes its tests, installs and goes without a trace, and
# makes itself again.
distcheck: dist
	.packaging/dist-check $(abspath $(TARBALL))

# Built apart, with the flags that Debian asks for.
DEB_BUILD := build-deb
deb_flags  = $(shell DEB_BUILD_MAINT_OPTIONS=hardening=+all dpkg-buildflags --get $(1))

deb:
	rm -rf $(DEB_BUILD)/root
	$(MAKE) BUILD=$(DEB_BUILD) CPPFLAGS='$(call deb_flags,CPPFLAGS)' \
		CFLAGS='$(call deb_flags,CFLAGS)' LDFLAGS='$(call deb_flags,LDFLAGS)' \
		prefix=/usr DESTDIR=$(DEB_BUILD)/root zshdir=/usr/share/zsh/vendor-completions install
	.packaging/make-deb $(DEB_BUILD)/root $(VERSION) $(DEB_BUILD)

# Two builds, in two folders, at two times, in two locales, under two umasks: the same bytes.
check-reproducible: dist
	.packaging/reproducible-check $(abspath $(TARBALL))

.PHONY: dist distcheck deb check-reproducible
