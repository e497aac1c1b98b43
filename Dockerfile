# One static program and a folder for its data. Build: docker build -t coursewright .
# Run:   docker run -it -p 127.0.0.1:7310:7310 -v coursewright:/data coursewright
# To the program every browser comes from the network, so each is asked once for the code, which it prints where -it gives it a
# window, and else writes into the file coursewright.db-code of the volume. The address it prints is the container's and of no
# use outside. Under an address other than 127.0.0.1, say what browsers call it:
#        docker run -it -p 7310:7310 -v coursewright:/data coursewright serve --lan --host 192.168.7.2 --data /data/coursewright.db
FROM golang:1.26 AS build
WORKDIR /src
COPY go.mod go.sum ./
RUN go mod download
COPY . .
RUN CGO_ENABLED=0 go build -trimpath -ldflags='-s -w' -o /out/coursewright ./cmd/coursewright \
 && mkdir /out/data

FROM scratch
COPY --from=build /out/coursewright /coursewright
# Numbers, for there is no user table in the image. A volume takes the owner of the folder it covers.
COPY --from=build --chown=65532:65532 /out/data /data
USER 65532:65532
VOLUME /data
EXPOSE 7310
ENTRYPOINT ["/coursewright"]
CMD ["serve", "--lan", "--data", "/data/coursewright.db"]
